command -v gnuplot >/dev/null || exit 77
boilback run calm.bath --csv log.csv --step '20 min' >/dev/null
printf '[uncertain]\nheat efficiency = 50 %% to 80 %%\n' | cat calm.bath - >u.bath
boilback fit u.bath log.csv --plot out.svg >/dev/null && [ "$(head -c 5 out.svg)" = '<?xml' ] || echo "no svg"
boilback fit u.bath log.csv --plot - >terminal
grep -q 'o measured' terminal || echo "nothing in the terminal"
awk 'length > 80' terminal
cut -d, -f1,3 log.csv >temperatures.csv
boilback fit u.bath temperatures.csv --plot - | grep -c 'o measured'
name='$(touch pwned) `touch pwned` "; system("touch pwned") <script>.csv'
cp log.csv "$name"
boilback fit u.bath "$name" --plot out.svg >/dev/null || echo "failed"
grep '<script' out.svg
find . -name pwned
