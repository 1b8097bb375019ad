# What [now] says is read with the list of jobs, and all that is wrong is said at once.
cp "$BOILBACK_DATA"/scenarios/plan/short-morning.* .
boilback plan short-morning.bath --now
cp short-morning.bath bad.bath
cat >>bad.bath <<'END'
[now]
reads = 287
boils = maybe
level = 40 in
in the tank = spindels since 6:20
in the tank = keys + pulleys since 7:30, out at 6:48
in the tank = shafts
in the tank = clips since 6:30
out = frames 3/2, keys, hooks 1/2, frames 1/2, frames 1/3, clips
withdrawn = levers, levers
urgent = hooks, washers by 6:30
clock = 6:45
clock = 6:46
weather = fine
END
boilback plan bad.bath --now
now() { cp short-morning.bath now.bath && cat >>now.bath && boilback plan now.bath --now "$@"; }
printf '[now]\nclock = 8:00\n' | now
printf '[now]\nclock = 7:00\nreads = 287 degF\nboils = no\nlevel = 19 in\n' | now
printf '[now]\nclock = 7:00\nreads = 180 degF\nboils = yes\nlevel = 19 in\n' | now
printf '[now]\nclock = 7:00\nreads = 287 degF\nboils = yes\nlevel = 19 in\nlast boiled = 286 degF\n' | now
printf '[now]\nclock = 7:00\nreads = 287 degF\nboils = yes\nlevel = 19 in\n' | now --odds '95 %'
printf '[now]\nclock = 7:00\nreads = 287 degF\nboils = yes\nlevel = 19 in\n' >rest.txt
echo 'out = frames, washers, spindles, hooks, shafts, clips, keys, plates, pulleys, levers' >>rest.txt
now <rest.txt
sed -i 's/^boiling point = 285.*/&\nwater afloat = 1 gal/' short-morning.bath
printf '[now]\nclock = 7:00\nreads = 287 degF\nboils = yes\nlevel = 19 in\n' | now
cp "$BOILBACK_DATA"/scenarios/plan/short-morning.bath .
printf '[now]\nclock = 7:00\nreads = 287 degF\nboils = yes\nlevel = 19 in\nout = frames 1/2/3, frames /2, frames 1/, frames 1/2\n' | now
