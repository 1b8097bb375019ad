# Two acts in one second, and two after one another by their times.
boilback practise gallons.bath --script - <<'END'
0:05 load 42 lb, plate 1/4 in, at 70 degF, for 15 min, basket 7 lb
heat 50 %
+90 s heat 100 %
1 min after the boil is back water 1 gal over 2 min
acts
wait 20 min
quit
END
