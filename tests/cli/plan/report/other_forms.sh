sed -e 's/^jobs .*//' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >two.bath
cat >>two.bath <<'END'
[jobs]
pins  60 lb, bar 3/4 in, 120 pieces, for 20 min to 40 min, basket 15 lb, due 7:00, must
beams 150 lb iron, plate 3/8 in, 6 pieces, for 15 min, from 6:10, basket 10 lb, may split
END
boilback plan two.bath --csv - | sed -E 's/(\.[0-9]{1})[0-9]+/\1/g'
boilback plan two.bath --json --units si | sed -E 's/(\.[0-9]{1})[0-9]+/\1/; s/(e-?[0-9]+)//' | grep -v version
boilback plan two.bath --units si --write two-plan.bath | sed -n '/clock  do/,/^$/p'
grep '^[67]:' two-plan.bath
