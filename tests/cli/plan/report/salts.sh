# Thin trays that drain badly carry out a quarter inch of level before the shift is over: the salts are sifted back in, the water before them
# and a rest between, in the next gap that is long enough; what is written holds as a run. Where the shift ends too soon it is told instead.
sed -e 's/^jobs .*//' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >drained.bath
cat >>drained.bath <<'END'
[jobs]
covers  45 lb, plate 1/32 in, for 15 min to 30 min, basket 10 lb, drag-out 450 mL/m2
trays   45 lb, plate 1/32 in, for 15 min to 30 min, basket 10 lb, drag-out 450 mL/m2
lids    45 lb, plate 1/32 in, for 15 min to 30 min, basket 10 lb, drag-out 450 mL/m2
louvres 40 lb, plate 1/32 in, for 15 min to 30 min, basket 5 lb, from 7:00, drag-out 450 mL/m2
levers  70 lb, plate 3/8 in, for 20 min to 35 min, basket 15 lb, from 7:30
END
boilback plan drained.bath --write plan.bath --csv plan.csv --html plan.html | sed -n '1,/^ What dips/p'
sed -n '/salts .* over/p' plan.bath
grep ',salts,' plan.csv
grep -c '>salts<' plan.html
boilback run plan.bath --strict | sed -n '1,2p'
boilback plan drained.bath --json | sed -n -e '/salts_owed/p' -e '/"salts": \[/,/\]/p'
sed -e 's/^settle.*/end = 6:45/' -e '/^louvres/d' -e '/^levers/d' -e 's/^lids.*/&\nplugs 45 lb, plate 1\/32 in, for 15 min to 30 min, drag-out 450 mL\/m2/' drained.bath >short.bath
boilback plan short.bath | sed -n '1,/^$/p'
exit 0
