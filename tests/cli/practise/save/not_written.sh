# What cannot be written at the end is said then, and is no success; a file may have any name.
echo 'water 1 gal over 4 min' >orders
for how in '--save /dev/full' '--html /dev/full'; do
    boilback practise gallons.bath --script orders $how >/dev/null
    echo "exit $?"
done
cp gallons.bath lessons
boilback practise lessons --script orders >said
echo "exit $?, $(grep -c 'the shift is over' said)"
boilback practise lesson --script orders
