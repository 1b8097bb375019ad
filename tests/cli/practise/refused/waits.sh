# An act that waits is wrong: pointed at in its own words, when it is read or when it is done.
boilback practise gallons.bath --script - <<'END'
when boiling for 1 min watr 1 gal
when boiling for 1 min lift rack 1
when boiling water 2 gal ovr 1 min
quit
END
