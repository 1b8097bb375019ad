# A page's name as an address: letters, digits and -._ stand as they are, the rest by its number [RFC 3986].
cat >"$(printf 'Wash 0_z-A.Z 9 \303\234 [&%%].bath')" <<'END'
title = Short
duration = 1 min
[lesson]
goal = Wait
question = For what?
pass = quiet <= 60 s
[tank]
length = 5 ft
width = 2 ft
depth = 24.5 in
level = 16 in
[bath]
salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2
boiling point = 285 degF
[heat]
input = 190 kBtu/h
[careful]
[reckless]
0:00:10 water 1 gal over 5 s
END
boilback lesson Wash*.bath --all deck | tail -1
grep -o 'href="[^"]*"' deck/index.html
