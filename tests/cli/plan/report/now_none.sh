# The rest of a shift that cannot be done by its end: what would have to give is planned anew from the reading and carried out, in a bath
# that does not boil as well; each does in the words of a scenario what it is said to do. What is wrong as it begins no order mends.
sed -e 's/^jobs .*//' -e 's/^positions .*/positions = 2/' -e 's/^settle .*/&\nend = 7:53/' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >quiet.bath
cat >>quiet.bath <<'END'

[jobs]
pins    60 lb, bar 3/4 in, for 20 min to 40 min, basket 15 lb
covers  45 lb, plate 1/8 in, for 15 min to 30 min, basket 10 lb, may share
shims   30 lb, plate 1/8 in, for 15 min to 30 min, basket 5 lb, may share
levers  70 lb, plate 3/8 in, for 20 min to 35 min, basket 15 lb

[now]
clock = 7:01
reads = 270 degF
boils = no
last boiled = 286 degF
level = 19.6 in
in the tank = pins since 6:50
END
verdict() { boilback plan "$@" --now | sed -n '1,/^ It is/p' | sed '$d'; }
verdict quiet.bath
sed 's/^input .*/input = 399.3 kBtu\/h/' quiet.bath | verdict -
sed 's/^positions .*/positions = 3/' quiet.bath | verdict -
echo 'withdrawn = levers' | cat quiet.bath - | verdict -
# Too soon for what hangs there, and a reading that the band does not allow.
sed 's/^end .*/end = 7:30/' quiet.bath | verdict -
sed -e 's/^boils .*/boils = yes/' -e '/^last boiled/d' -e 's/^reads .*/reads = 296 degF/' quiet.bath | verdict -
