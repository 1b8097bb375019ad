# Findings in number, most with more words than a line holds: all that are listed fit into the picture.
command -v gnuplot >/dev/null || exit 77
cat >everything.bath <<'END'
title = Everything at once
start = 6:00
duration = 3 h
[tank]
length = 30 in
width = 20 in
depth = 80 in
level = 55 in
[bath]
salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2
boiling point = 285 degF
[heat]
input = 200 kBtu/h
efficiency = 60 %
[limits]
recovery = 30 s
boiling point = 284 degF to 286 degF
[schedule]
0:05 load 300 lb, bar 3 in, at 40 degF, for 20 min
0:06 water 6 gal over 20 s
0:08 salts 60 lb over 10 s
0:30 liquid 10 gal over 20 s
0:40 load 300 lb, tube 3 in wall 1/4 in, at 30 degF, for 10 min
0:41 salts 90 lb over 5 s
1:00 water 10 gal over 15 s
1:30 heat off
2:00 water 5 gal over 30 s
2:20 load 80 lb, plate 1/4 in, at 20 degF, for 5 min
END
boilback run everything.bath --plot out.svg >/dev/null && [ "$(head -c 5 out.svg)" = '<?xml' ] || echo "no picture"
boilback run everything.bath --plot - >terminal
grep -q '^ 14 .*CAUTION' terminal && grep -q 'and 4 more, see the report' terminal || echo "the list is cut"
awk 'length > 80' terminal
