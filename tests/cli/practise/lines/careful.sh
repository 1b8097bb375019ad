# Water only when the boil has been back for a minute.
boilback practise gallons.bath --script - <<'END'
0:05 load 42 lb, plate 1/4 in, at 70 degF, for 15 min, basket 7 lb
when boiling for 1 min water 2 gal over 4 min, at 60 degF
END
