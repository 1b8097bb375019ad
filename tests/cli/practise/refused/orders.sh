# Orders that cannot be read are no orders: a folder is told before the shift, a standard input that breaks off when it does, and
# a line that never ends by its first mebibyte.
mkdir folder
boilback practise gallons.bath --script folder
echo "exit $?"
boilback practise gallons.bath --lines <folder | tail -1
boilback practise gallons.bath --script /dev/zero | tail -1
