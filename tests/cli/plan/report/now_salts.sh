# What parts carried out since the shift began is told by level and strength: the rest of the shift puts it back.
sed -e 's/^jobs .*//' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >shift.bath
cat >>shift.bath <<'END'
[jobs]
trays   45 lb, plate 1/32 in, for 15 min to 30 min, basket 10 lb
levers  70 lb, plate 3/8 in, for 20 min to 35 min, basket 15 lb
shafts  70 lb, bar 3/4 in, for 20 min to 35 min, basket 15 lb

[now]
clock = 7:01
reads = 285 degF
boils = yes
level = 19.4 in
out = trays
END
boilback plan shift.bath --now | sed -n '1,/^$/p;/SALTS/p'
boilback plan shift.bath --now --json | sed -n '/salts_gone/p'
