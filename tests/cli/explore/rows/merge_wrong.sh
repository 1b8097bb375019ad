boilback explore uncertain.bath --samples 16 --shard 1/8 >a.csv
boilback explore uncertain.bath --samples 16 --shard 1/8 --seed 2 >b.csv
sed 's/^0,0\.[0-9]*\(.*\),1,\([0-9]\)/0,0.5\1,1,9\2/' a.csv >changed.csv
boilback explore --merge a.csv b.csv
boilback explore --merge a.csv changed.csv
boilback explore --merge a.csv uncertain.bath
boilback explore --merge uncertain.bath
boilback explore --merge missing.csv
boilback explore --merge a.csv --samples 3
