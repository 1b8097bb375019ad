# Beside the shift the same with care, each act that care has changed in words of its own: a load in parts, hollows emptied.
lessons=$BOILBACK_DATA/scenarios/lessons
for lesson in 03-heavy-load 09-tubes-full-of-rinse-water; do
    sed -n '/^\[reckless\]/,/^\[/p' "$lessons/$lesson.bath" | grep -v '^\[' >orders
    boilback practise "$lessons/$lesson.bath" --script orders --html page.html >/dev/null
    echo "exit $?"
    sed -n 's/^\(\[[0-9.]*,"[^"]*goes in[^"]*"\),[01]\]*,*$/\1/p' page.html
done
