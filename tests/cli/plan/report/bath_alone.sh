# A bath that leaves too little freeboard before anything goes in: no order mends that, so none is sought, and it is said. Pipes are found wherever
# they go in.
sed 's/^depth.*/depth = 24 in/' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >full.bath
cp "$BOILBACK_DATA/scenarios/plan/five-jobs.csv" .
boilback plan full.bath | sed -n -e '1p' -e '/There is none/,/^$/p' -e '/timetables/s/.*seed 1, //p'
boilback plan full.bath --json | sed -n '/"failed"/,/\]/p'
sed -e 's/^jobs .*//' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >pipes.bath
printf '\n[jobs]\npipes 40 lb, tube 2 in wall 1/8 in, for 15 min to 30 min\n' >>pipes.bath
boilback plan pipes.bath | sed -n '1,/^$/p'
