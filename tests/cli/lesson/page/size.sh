# A page is no larger than 200 KiB, and the same bytes each time.
cp "$BOILBACK_DATA"/scenarios/*.bath .
boilback lesson water-while-quiet.bath water-while-boiling.bath --html one.html >/dev/null
boilback lesson water-while-quiet.bath water-while-boiling.bath --html - >two.html
cmp one.html two.html
boilback lesson full-day-automatic-water.bath --html three.html >/dev/null
for page in one three; do
    [ "$(wc -c <$page.html)" -le 204800 ] || echo "$page: $(wc -c <$page.html)"
done
