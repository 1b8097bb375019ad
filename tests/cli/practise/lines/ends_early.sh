# Nobody adds water, and the bath boils dry: the run ends there, nothing can be done any more, and going back can. Exit status 1, or 2 where an
# order was for later.
cat >dry.bath <<'END'
start = 9:00
duration = 12 h
[tank]
length = 2 ft
width = 1 ft
depth = 20 in
level = 10 in
[bath]
salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2
boiling point = 285 degF
[heat]
input = 190 kBtu/h
END
boilback practise dry.bath --script /dev/null >said
echo "exit $?"
grep -n 'ends early' said
boilback practise dry.bath --script - >said <<'END'
wait 2 h
2:10 water 1 gal over 4 min
when quiet for 5 s water 1 gal over 4 min
END
echo "exit $?"
grep 'ends early' said
