sed 's/recovery = 2 min/recovery = 1 s/; s/load 60 lb/load 900 lb/' hooded.bath >quick.bath
boilback size quick.bath --sheet
boilback size quick.bath --sheet --json
