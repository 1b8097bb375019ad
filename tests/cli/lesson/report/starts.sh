# Two that start at different times of day: both are told by the time from their start, on the page and on paper as well.
cp "$BOILBACK_DATA"/scenarios/water-while-*.bath .
sed 's/^start .*/start = 22:30/' water-while-quiet.bath >night.bath
boilback lesson night.bath water-while-boiling.bath --html page.html | sed '/^A prediction/,$d'
sed -n '/<header>/,/<\/header>/p; /<section id="sheet"/,/<\/section>/p' page.html | grep -v '^<svg' | sed 's/<[^<>]*>/ /g' |
    grep -oE '[0-9]+:[0-9]{2}(:[0-9]{2})?|.*from the start.*' | LC_ALL=C sort -u
grep -o '"start":[0-9]*' page.html
