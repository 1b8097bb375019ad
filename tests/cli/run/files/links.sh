# A link is written through, also one that leads to nothing yet; one that leads round in a circle is named.
mkdir folder
ln -s target.csv folder/one.csv
ln -s folder/one.csv two.csv
ln -s round.csv round.csv
boilback run calm.bath --csv two.csv --step "30 min" >/dev/null && ls -F . folder | grep -v bath && sed -n '1s/,.*//p' folder/target.csv
boilback run calm.bath --csv round.csv >/dev/null
