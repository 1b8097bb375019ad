# What is wrong is said once: a moment that could not be read is held against nothing, and a job that could not is no unknown name in
# [now]. What else is wrong there is said all the same.
sed -e 's/^jobs .*//' -e 's/^start .*/&\nduration = 3 h/' -e 's/^settle .*/&\nend = 8:45/' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >shift.bath
cp shift.bath late.bath
cat >>late.bath <<'END'
[jobs]
pins    60 lb, bar 3/4 in, for 20 min, due 9:30
beams   60 lb, bar 3/4 in, for 20 min, due 9:30, must
covers  60 lb, bar 3/4 in, for 20 min, from 9:30
levers  60 lb, bar 3/4 in, for 9999999 min to 10 min
hooks   60 lb, bar 3/4 in, for 20 min, due soon
clips   60 lb, bar 3/4 in, for 50 min, due 6:40
plates  60 lb, bar 3/4 in, for 50 min

[now]
clock = 6:10
reads = 285 degF
boils = yes
level = 19.5 in
in the tank = pins since 6:00
urgent = plates by 9:30
END
boilback plan late.bath --now
# A list that is right, and one mistake elsewhere.
cat >>shift.bath <<'END'
[jobs]
pins 60 lb, bar 3/4 in, for 20 min
[now]
clock = 6:10
reads = 285 degF
boils = yes
level = 19.5 in
out = pinns
END
sed -i 's/^depth .*/depth = 3 lb/' shift.bath
boilback plan shift.bath --now
