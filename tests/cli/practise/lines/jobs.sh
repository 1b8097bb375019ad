# Jobs that nobody has planned: said, and the shift is long enough for all of them.
cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.* "$BOILBACK_DATA"/scenarios/plan/short-morning.* .
boilback practise five-jobs.bath --script - --save worked.bath <<'END_OF_ORDERS'
6:02 load 80 lb, plate 1/4 in, 40 pieces, basket 15 lb, at 90 degF, for 15 min
wait until 8:00
quit
END_OF_ORDERS
grep -n duration worked.bath
boilback check worked.bath | head -2
echo quit | boilback practise short-morning.bath --script - --save worked.bath
grep -n duration worked.bath
