sed 's/recovery = 2 min/recovery = 1 s/' hooded.bath >quick.bath
boilback size quick.bath --sheet
boilback size quick.bath --sheet --json
