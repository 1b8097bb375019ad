# Odds of the rest of a shift: asked for in [plan], where an option on the line wins, and drawn from the bath as it was read, not as the
# shift began. What is written takes over what is uncertain but for what was read, so that 'explore' counts the same.
sed -e 's/^jobs .*//' -e 's/^boiling point = 285.*/boiling point = 285 degF/' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >shift.bath
sed -i 's/^settle .*/&\nodds = 60 %/' shift.bath
cat >>shift.bath <<'END'

[uncertain]
heat efficiency = 44 % to 70 %
bath boiling point = 284 degF to 286 degF
tank level = 19 in to 21 in

[jobs]
beams  95 lb, plate 3/8 in, 6 pieces, for 15 min, basket 12 lb, may split
pins   20 lb, bar 1/2 in, for 15 min

[now]
clock = 7:01
reads = 287 degF
boils = yes
level = 19.6 in
in the tank = pins since 6:45
END
boilback plan shift.bath --now --write rest.bath | sed -n '1,/^ Water only/p'
sed -n '/^\[uncertain\]/,/^$/p' rest.bath
boilback plan shift.bath --now --json | sed -n '/^  "odds"/,/^  }/p' | tee odds.json | head -3
boilback explore rest.bath --seed 9 --samples 128 --json | sed -n '/"all_loads_back"/,/}/p' >again.json
number() { sed -n "s/.*\"$1\": \([0-9.]*\).*/\1/p" "$2" | sed -n "${3}p"; }
awk -v low="$(number low odds.json 2)" -v high="$(number high odds.json 2)" -v again="$(number chance again.json 1)" \
    'BEGIN { print (low <= again && again <= high ? "as counted again" : low " to " high " against " again) }'
boilback plan shift.bath --now --odds '50 %' --json | sed -n '/"asked"/p'
# Where all of it was read there is nothing left to draw.
sed '/^heat efficiency/d' shift.bath >read.bath
boilback plan read.bath --now
