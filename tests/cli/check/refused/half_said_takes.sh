# What is taken and run back: each line lacks a number, a unit, a word or an end, and is told which.
cat >>half.bath <<'END'
0:05  bail
0:05  bail 5 gal
0:05  bail 5 gal at
0:05  bail 5 gal at 2 psia
0:05  bail 5 gal at 2 gal/min now
0:05  bail 5 gal over
0:05  bail 5 gal over 5 lb
0:05  bail 5 gal over 40 h
0:05  bail 5 gal over 5 min now
0:05  bail at 2 gal/min
0:05  bail at 2 psia until the mark
0:05  bail to
0:05  bail to level
0:05  bail to level 50 in, at 5 gal/min
0:05  bail 5 gal over 5 min, as drum 1
0:10  return drum 1
0:10  return drum 1 over
0:10  return drum 1 over 5 lb
0:10  return drum 1 over 40 h
0:10  return drum 1 over 5 min now
0:10  return drum 1 over 5 min, warm
0:10  return drum 1 over 5 min, at
0:10  return drum 1 over 5 min, at 5 lb
0:10  return drum 1 over 5 min, at 900 degF
0:10  return drum 1 over 5 min, at 60 degF now
END
boilback check half.bath
