# Beyond the overflow nothing is a prediction, whatever is done then.
boilback practise gallons.bath --script - <<'END'
0:05 load 42 lb, plate 1/4 in, at 70 degF, for 15 min, basket 7 lb
0:05:20 water 2 gal over 1 min, at 60 degF
wait until 0:07
water 1 gal over 2 min
END
