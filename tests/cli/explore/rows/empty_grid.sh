# A share of a grid that has no rows has as many cells in its line as in its head: any reader of CSV reads it.
boilback explore uncertain.bath --samples 4 --grid "heat input = 200 kBtu/h to 300 kBtu/h : 2" --shard 900/1000 >empty.csv
sed 's/"[^"]*"/plan/g' empty.csv | awk -F, 'NR == 1 { cells = NF } { print NF == cells ? "as many cells" : "line " NR ": " NF " cells" }'
