# What loads carry and where they hang: each line lacks a number, a unit, a word or an end, and is told which.
cat >>half.bath <<'END'
0:15  load 50 lb, plate 1/4 in, pockets
0:15  load 50 lb, plate 1/4 in, pockets 5 lb each
0:15  load 50 lb, plate 1/4 in, pockets 900 gal each
0:15  load 50 lb, plate 1/4 in, pockets 1 in3 apiece
0:15  load 50 lb, plate 1/4 in, pockets 1 mL each each
0:15  load 50 lb, plate 1/4 in, position
0:15  load 50 lb, plate 1/4 in, position left
0:15  load 50 lb, plate 1/4 in, position 0
0:15  load 50 lb, plate 1/4 in, position 5
0:15  load 50 lb, plate 1/4 in, position 1.5
0:15  load 50 lb, plate 1/4 in, position 1 left
0:15  load 50 lb, plate 1/4 in, position 1, position 2
0:15  load 50 lb, plate 1/4 in, 0 pieces
0:15  load 50 lb, plate 1/4 in, 1.5 pieces
0:15  load 50 lb, plate 1/4 in, 5 pieces or so
0:15  load 50 lb, plate 1/4 in, 5 pieces, 6 pieces
0:15  load 50 lb, plate 1/4 in, 9000000 pieces
END
boilback check half.bath
