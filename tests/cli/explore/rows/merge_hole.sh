# A row without its number is another row than the one with it, in whichever order they come.
boilback explore uncertain.bath --samples 4 --shard 1/8 >rows.csv
sed 's/^\(0,[^,]*,[^,]*,[^,]*,[^,]*,1,\)[^,]*,/\1,/' rows.csv >hole.csv
boilback explore --merge rows.csv hole.csv
boilback explore --merge hole.csv rows.csv
