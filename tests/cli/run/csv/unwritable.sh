boilback run calm.bath --csv missing/out.csv | head -1
ls
boilback run calm.bath --csv missing/out.csv >/dev/null
