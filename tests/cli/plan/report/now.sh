# The rest of a shift: what hangs keeps its place until its lift, no load goes in before it takes no heat, what is out or withdrawn is gone, and
# water is planned for what the reading says is missing. What is written begins now.
sed -e 's/^jobs .*//' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >shift.bath
sed -i 's/^positions .*/positions = 2/' shift.bath
cat >>shift.bath <<'END'

[jobs]
brackets 80 lb, plate 1/4 in, 40 pieces, for 15 min to 30 min, basket 15 lb, may split
pins     60 lb, bar 3/4 in, for 20 min to 40 min, basket 15 lb, due 8:00
covers   45 lb, plate 1/8 in, for 15 min to 30 min, basket 10 lb, may share
shims    30 lb, plate 1/8 in, for 15 min to 30 min, from 7:30, basket 5 lb, may share
levers   70 lb, plate 3/8 in, for 20 min to 35 min, basket 15 lb

[breaks]
6:30 to 6:40 first
7:40 to 7:50 second

[now]
clock = 7:01
reads = 287 degF
boils = yes
level = 19.6 in
in the tank = pins since 6:50
in the tank = brackets 2/2 since 6:41, out by 7:04
out = brackets 1/2
withdrawn = covers
urgent = shims by 7:35
END
boilback plan shift.bath --now --write rest.bath | sed -n '1,/^ Water only/p'
grep -v '^$' rest.bath | sed -n -e '1,4p' -e '/^\[tank\]/,/^shape/p' -e '/^\[bath\]/,/^salts/p' -e '/^\[breaks\]/,$p'
boilback run rest.bath --strict | sed -n '1p;/boils at  /p'
# Who forgets to say --now is told.
boilback plan shift.bath 2>&1 >/dev/null
# A bath that does not boil is heated up first.
sed -e 's/^boils = .*/boils = no/' -e 's/^reads .*/reads = 270 degF/' -e 's/^urgent.*/last boiled = 286 degF/' shift.bath >quiet.bath
boilback plan quiet.bath --now --json | sed -n '/^  "now"/,/^  }/p'
boilback plan quiet.bath --now | sed -n -e '1,/^$/p' -e '/clock  do/,/^$/p'
