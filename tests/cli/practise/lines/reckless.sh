# The same water while the load holds the boil down: told as it comes, and what it comes to.
boilback practise gallons.bath --script - <<'END'
0:05 load 42 lb, plate 1/4 in, at 70 degF, for 15 min, basket 7 lb
0:05:20 water 2 gal over 1 min, at 60 degF
wait 30 s
next
next
END
