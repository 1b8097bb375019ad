# A mistake is pointed at, and the next line is read: the exit status is 2.
boilback practise gallons.bath --script - <<'END'
watr 2 gal over 1 min
water 2 gal ovr 1 min
water 2 lb over 0 s
every 5 min water 1 gal over 2 min
every 5 min from 0:05 watr 1 gal
wiat 2 min
wait
wait two minutes
wait until 25:00
0:45 water 1 gal over 2 min
when boilng water 1 gal over 2 min
when boiling
+2 min heat 30 %
0:05
state now
lift rack 1
lift
load 20 lb, plate 1/4 in, as rack 1
load 20 lb, plate 1/4 in, as rack 1
# a comment, and an empty line:

tabs	are	blanks
wait 5 min
quit
END
printf 'state\nwater 2 gal\033[2J over 1 min\nstate\377\nquit\n' | boilback practise gallons.bath --script - | sed -n 5,6p
