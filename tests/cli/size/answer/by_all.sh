# By the grave laws alone the heat would do; by all of them it leaves too little: no bound says to count on more.
cat >line.bath <<'END'
times = by the clock
title = Lever line, Tuesday
start = 6:30
duration = 5 h
[tank]
length = 5 ft
width = 22 in
depth = 26 in
level = 18 in
positions = 3
[bath]
salts = 70 % NaOH, 25 % NaNO3, 5 % NaNO2
boiling point = 287 degF
[heat]
source = electric
input = 38 kW
[room]
temperature = 62 degF
[breaks]
9:00 to 9:15
[schedule]
every 25 min from 6:40 to 11:00 load 35 lb, plate 3/16 in, for 15 min, basket 8 lb
every 50 min from 7:00 to 11:00 when boiling water 3 gal over 10 min
END
boilback size line.bath | sed -n '1,2p; /^Most heat/,/^What/p'
