# What else [now] cannot say, and lines that are none.
cp "$BOILBACK_DATA"/scenarios/plan/short-morning.* .
cat >>short-morning.bath <<'END'
[now]
clock = 7:00 sharp
reads = 287 degF hot
boils =
level 19 in
in the tank = spindles since 6:20 or so
in the tank = hooks 0/2 since 6:20
in the tank = hooks 1/99 since 6:20
in the tank = hooks 1/2 since 6:20, out by 7:10 at last
in the tank = spindles + since 6:20
in the tank =
urgent = hooks 1/2, hooks 2/2
urgent = hooks by 9:00 sharp
out = hooks 1/2 and more
out = hooks one half
withdrawn =
END
boilback plan short-morning.bath --now
