boilback size calm.bath --table --csv table.csv | sed -n 1p
head -4 table.csv
boilback size calm.bath --csv -
