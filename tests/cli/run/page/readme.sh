# What the page says of the model's limits, README says word by word.
tr -s '` \n' ' ' <"$BOILBACK_DATA/README.md" | sed 's/ - / /g; s/ elevation factor / elevation factor /' >readme
boilback run calm.bath --html page.html >/dev/null 2>&1
sed -n '/<section[^>]*"limits"/,/<.section>/p' page.html | sed 's/<[^>]*>//g; /^$/d' | while IFS= read -r sentence; do
    grep -qF "$sentence" readme || echo "README lacks: $sentence"
done
grep -c '<li>' page.html
