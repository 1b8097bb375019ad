# A valve without its interlock is not taken as shut because the runs found it so; and what parts carry out is put back.
sed -e 's/^jobs .*//' -e 's/^positions .*/positions = 1/' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >valve.bath
cat >>valve.bath <<'END'

[water control]
set point = 286 degF
rate = 0.8 gal/min
dead time = 40 s
only while boiling = no

[jobs]
trays 45 lb, plate 1/8 in, for 15 min to 30 min, basket 10 lb, area 300 ft2, rinse 0 mL/m2, drag-out 450 mL/m2
END
boilback plan valve.bath | sed -n '1,/^$/p'
boilback plan valve.bath --json | sed -n -e '/drag_out/p' -e '/valve/p'
sed 's/^only while boiling.*/only while boiling = yes/' valve.bath >locked.bath
boilback plan locked.bath | grep -c INTERLOCK
exit 0
