# The same seed gives the same bytes on any number of threads.
cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.* .
for threads in 1 2 8; do boilback plan five-jobs.bath --threads $threads --json >$threads.json; done
cmp 1.json 2.json && cmp 1.json 8.json && echo the same
