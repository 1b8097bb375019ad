# The shift is too short for the second job: the best attempt says what it breaks, and so does what is written.
sed -e 's/^jobs .*//' -e 's/^settle.*/end = 6:45/' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >short.bath
cat >>short.bath <<'END'
[jobs]
pins  60 lb, bar 3/4 in, for 20 min to 30 min
beams 60 lb, plate 3/8 in, for 15 min, from 6:30
END
boilback plan short.bath --write plan.bath | sed -n '1,/clock  do/p'
boilback plan short.bath >/dev/null
status=$?
head -2 plan.bath
exit $status
