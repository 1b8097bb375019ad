# What a job cannot say, line by line; and how many there may be, and how long a line.
sed -e 's/^jobs .*//' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >head.bath
plan() { { cat head.bath && cat; } >list.bath && boilback plan list.bath "$@"; }
plan <<'END'

[jobs]
clips   30 lb, plate 1/16 in, for half an hour
pins    60 lb, bar 3/4 in, for 10 s
shims   30 lb, plate 1/8 in, for 15 min to soon
covers  45 lb, plate 1/8 in, for 15 min to 400 h
levers, plate 1/4 in, for 15 min
hooks   40 lb, bar 3/8 in, as hooks, for 15 min
gears   40 lb, bar 3/8 in, position 2, for 15 min
tubes   40 lb, tube 2 in wall 1/8 in, pockets 1 gal in all, for 15 min, may split
racks   40 lb, plate 1/4 in, area 20 ft2, for 15 min, may split
studs   40 lb, bar 3/8 in, for 15 min
Studs   40 lb, bar 3/8 in, for 15 min
bolts   40 lb, bar 3/8 in, for 15 min to 20 min at most
nuts    40 lb, bar 3/8 in, for 15 min, for 20 min
END
{
    printf '\n[jobs]\nchain 40 lb, bar 3/8 in'
    awk 'BEGIN { for (i = 0; i < 600; i++) printf ", at 70 degF" }'
    printf ', for 15 min\n'
} | plan 2>&1 | cut -c 1-90
{
    printf '\n[jobs]\n'
    awk 'BEGIN { for (i = 1; i <= 501; i++) printf "job%d 40 lb, bar 3/8 in, for 15 min\n", i }'
} | plan
# Where the tank's places were not said, as many hang as are named; what hangs in parts is named by them.
sed -i '/^positions/d' head.bath
plan --now <<'END'

[jobs]
frames  190 lb, plate 1/4 in, 38 pieces, for 15 min, may split
angles  190 lb, plate 1/4 in, for 15 min, may split
spacers  30 lb, plate 1/8 in, 2 pieces, for 15 min, may split
pins     60 lb, bar 3/4 in, for 15 min, may split

[now]
clock = 7:00
reads = 900 degF
boils = yes please
level = 40 ft
in the tank = angles 1/3 + spacers since 6:50
in the tank = spacers 1/3 since 6:50
in the tank = angles 2/3 since 6:50, out by 7:10, if not sooner
out = frames 1/2, frames 1/2000, 1/2
urgent = frames by 7:40, angles by 7:50, pins 2/2 by 7:30
a=b
END
