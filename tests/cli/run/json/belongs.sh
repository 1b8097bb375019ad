# Which act a finding comes of: by its place among the acts, and by its line; an act of 'every' has that of its line.
cp "$BOILBACK_DATA"/scenarios/water-while-quiet.bath "$BOILBACK_DATA"/scenarios/tall-narrow.bath .
belongs() { boilback run "$1" --json | sed -n '/"belongs"/,/^  \]/p' | grep -v '[{}]'; }
belongs water-while-quiet.bath
grep -n '^0:05:20' water-while-quiet.bath
belongs tall-narrow.bath
