# What paper shows, tag by tag: a bath before its boil is back, with parts in it, salt on its floor and water still running onto it; as
# it comes over; and after that, when nothing is a prediction any more. Beside it a smaller tank, to the same scale.
drawn() { # run, which of its four pictures
    awk -v run="data-run=\"$1\"" -v which="$2" '
        /<svg/ && index($0, run) > 0 { shows = ++n == which }
        shows { gsub(/></, ">\n<"); print }
        /<\/svg>/ { shows = 0 }' page.html
}
cat >all.bath <<'END'
title = All at once
duration = 20 min
[tank]
length = 66 in
width = 36 in
depth = 30 in
level = 20 in
[bath]
salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2
boiling point = 285 degF
[heat]
source = gas
input = 300 kBtu/h
[schedule]
0:01 load 250 lb, bar 8 in, for 15 min
0:01:20 salts 200 lb over 30 s
0:01:30 water 8 gal over 10 min
0:14 heat 40 %
END
boilback lesson all.bath calm.bath --html page.html >/dev/null
drawn 0 2
drawn 0 3
drawn 0 4
drawn 1 3
