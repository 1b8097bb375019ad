sed -e '/^jobs /d' -e '/^positions/d' -e '/^times/d' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >bad.bath
echo '[schedule]
0:05 load 20 lb, bar 1 in, for 20 min' >>bad.bath
boilback plan bad.bath
cp "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" bad.bath
cat >>bad.bath <<'END'
[jobs]
frames  90 lb, plate 1/4 in, for 15 min
END
boilback plan bad.bath
sed -i '/^jobs /d' bad.bath
cat >>bad.bath <<'END'
frames  90 lb brass, plate 1/4 in, for 15 min
190 lb, plate 1/4 in
bars 20 lb, bar 1/2 in
rods 20 lb, bar 1/2 in, for 20 min to 10 min
nuts 20 lb, plate 1/2 in, for 20 min, may split, area 2 ft2
bolts 20 lb, bar 1/2 in, for 20 min, for 30 min
studs 20 lb, bar 1/2 in, for 20 min, as x
keys 20 lb, bar 1/2 in, for 20 min, position 2
END
boilback plan bad.bath
sed -i '/^\[jobs\]/,$d' bad.bath
cat >>bad.bath <<'END'
[jobs]
frames 390 lb, plate 1/4 in, 40 pieces, for 15 min
anvils 400 lb, plate 1/4 in, 2 pieces, for 15 min, may split
END
boilback plan bad.bath
boilback plan bad.bath --write bad.bath
sed -i '/^\[jobs\]/,$d' bad.bath
sed -i 's/^positions/positions = 1\n#/' bad.bath
boilback plan bad.bath --csv - --json
