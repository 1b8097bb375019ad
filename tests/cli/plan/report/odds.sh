# With a heater that is known badly the job has to hang in two baskets, and what that costs is told. The odds of what was written, counted
# once more by 'explore' with other draws, lie within the interval that the plan gave.
sed -e 's/^jobs .*//' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >one.bath
cat >>one.bath <<'END'

[uncertain]
heat efficiency = 44 % to 70 %

[jobs]
beams  95 lb, plate 3/8 in, 6 pieces, for 15 min, basket 12 lb, may split
END
boilback plan one.bath --odds '95 %' --write two-baskets.bath | sed -n '1,/clock  do/p'
grep -c '^6:.* load ' two-baskets.bath
boilback plan one.bath --odds '60 %' --json --write written.bath | sed -n '/^  "odds"/,/^  }/p' | tee odds.json
boilback explore written.bath --seed 9 --samples 128 --json | sed -n '/"all_loads_back"/,/}/p' >again.json
number() { sed -n "s/.*\"$1\": \([0-9.]*\).*/\1/p" "$2" | sed -n "${3}p"; }
awk -v low="$(number low odds.json 2)" -v high="$(number high odds.json 2)" -v again="$(number chance again.json 1)" \
    'BEGIN { print (low <= again && again <= high ? "as counted again" : low " to " high " against " again) }'
# A job that may not split cannot have them: why is said, and what is shown are the odds that it has.
sed 's/, may split//' one.bath >whole.bath
boilback plan whole.bath --odds '95 %' >report
status=$?
sed -n '1,/^ What is known/p' report
exit $status
