# What the page says of the model's limits, boilback-limits(7) says word by word.
tr -s ' \n' ' ' <"$BOILBACK_DATA/src/manual/limits.md" | sed 's/ - / /g' >limits
boilback run calm.bath --html page.html >/dev/null 2>&1
sed -n '/<section[^>]*"limits"/,/<.section>/p' page.html | sed 's/<[^>]*>//g; /^$/d' | while IFS= read -r sentence; do
    grep -qF "$sentence" limits || echo "the page lacks: $sentence"
done
grep -c '<li>' page.html
