# Pours and times: each line lacks a number, a unit, a word or an end, and is told which.
cat >>half.bath <<'END'
0:20  water 5 gal over 5 min, one every 2 min
0:20  salts 2 bags, one every
0:20  salts 2 bags, one every 5 lb
0:20  salts 2 bags, one every 40 h
0:20  salts 0.5 bags, one every 2 min
0:20  salts 2 bags over
0:20  water at 1 gal/min until level
0:20  water at 1 gal/min until level 5 lb
0:20  water at 1 gal/min until level 50 ft
0:20  water at 1 gal/min until boiling point
0:20  water at 1 gal/min until boiling point 900 degF
0:20  water at 1 gal/min until noon
0:20  water at 1 gal/min until the mark now, at most 5 gal
0:20  water 5 gal over 5 min, while boiling, no later than
0:20  water 5 gal over 5 min, while boiling, no later than noon
0:20  water 5 gal over 5 min, while boiling, no later than 0:30 or so
0:20  water 5 gal over 5 min, while boiling, no later than 0:30, no later than 0:40
+ soon  stir for 2 min
+ 5 lb  stir for 2 min
every  stir for 2 min
every 5 lb  stir for 2 min
every 5 min from noon  stir for 2 min
every 5 min from 0:30 to noon  stir for 2 min
every 5 min from 0:30 until 1:00  stir for 2 min
1:00 pm  stir for 2 min
END
boilback check half.bath
