# Odds need what is uncertain, and are a share that draws can tell.
cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.* .
boilback plan five-jobs.bath --odds '95 %'
for odds in 0.95 '20 %' '100 %' many; do boilback plan five-jobs.bath --odds "$odds"; done
