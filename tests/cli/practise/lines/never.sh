# What is waited for and never comes is said, and the exit status is 1.
boilback practise gallons.bath --script - --units si <<'END'
0:05 heat 0 %
wait 5 min
when boiling for 1 min water 2 gal over 4 min
END
