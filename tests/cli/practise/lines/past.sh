# The clock does not go back for an act; taken back, it may be done otherwise.
boilback practise gallons.bath --script - <<'END'
0:05 water 2 gal over 1 min
0:04 water 1 gal over 1 min
wait until 0:04
back
acts
0:06 water 1 gal over 2 min
back
back
back
quit
END
