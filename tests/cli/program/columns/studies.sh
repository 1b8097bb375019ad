# No line of what is found by many runs is over 80 columns.
. "$BOILBACK_DATA/tests/columns.sh"
look size names.bath
look size trough.bath --load '1 lb per 1.5 gal' --units si
look size names.bath --table
look size names.bath --interval
look size names.bath --heaviest --units si
look size names.bath --heaviest --load '9000 lb'
look explore names.bath --samples 16
look explore names.bath --samples 16 --grid 'heat input = 250 kBtu/h to 350 kBtu/h : 2' --units si
boilback explore names.bath --samples 16 --shard 1/2 >half.csv
look explore --merge half.csv
boilback run names.bath --csv log.csv --step '5 min' >/dev/null
look fit names.bath log.csv
look fit names.bath log.csv --units si
