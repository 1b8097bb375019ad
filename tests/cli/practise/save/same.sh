# What is saved is a scenario like any other, and its run the shift that was worked; what it waited for stands as a comment.
cat >orders <<'END'
0:05 load 42 lb, plate 1/4 in, at 70 degF, for 15 min, basket 7 lb
when boiling for 1 min water 2 gal over 4 min, at 60 degF
0:20:30 heat 40 %
END
boilback practise gallons.bath --script orders --save worked.bath | grep -v "^ "
sed -n '/schedule/,$p' worked.bath
boilback run worked.bath | sed -n 1,8p
printf '[uncertain]\nheat input = 180 kBtu/h to 200 kBtu/h\n' >>gallons.bath
boilback practise gallons.bath --script orders --save worked.bath >/dev/null
boilback practise worked.bath --script orders --save again.bath | sed -n 3p
cmp worked.bath again.bath && boilback compare worked.bath again.bath | sed -n '/because/,/nothing/p'
ls | grep -v 'bath$'
