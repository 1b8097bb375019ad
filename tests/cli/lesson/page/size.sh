# A page is no larger than 200 KiB, and the same bytes each time.
cp "$BOILBACK_DATA"/scenarios/*.bath .
for pair in 'water-while-quiet water-while-boiling' full-day-automatic-water weekend 'normal-shift too-heavy'; do
    boilback lesson $(printf '%s.bath ' $pair) --html one.html >/dev/null
    boilback lesson $(printf '%s.bath ' $pair) --html - >two.html
    cmp one.html two.html
    [ "$(wc -c <one.html)" -le 204800 ] || echo "$pair: $(wc -c <one.html)"
done
