# What is saved is written over nothing that is read, and there is no half of it.
tell() {
    boilback practise "$@" 2>&1 >/dev/null
    echo "exit $?"
}
ln -s gallons.bath link.bath
cp gallons.bath kept.bath
echo 'water 1 gal over 4 min' >orders
tell gallons.bath --script orders --save link.bath
tell gallons.bath --script orders --save ./orders
tell gallons.bath --script orders --save -
tell - --script orders --save gallons.bath <gallons.bath
tell gallons.bath --script orders --save none/worked.bath
tell gallons.bath --script none
tell -
printf 'time,act\n0:10,water 1 gal over 4 min\n' >sheet.csv
{ echo 'schedule = sheet.csv'; cat gallons.bath; } >sheeted.bath
tell sheeted.bath --script orders --save sheet.csv
tell sheeted.bath --script orders --save worked.bath
grep -n sheet worked.bath
boilback practise gallons.bath --script orders --save out.bath >out.bath
echo "exit $?"
cmp gallons.bath kept.bath && ls | grep -v 'bath$'
