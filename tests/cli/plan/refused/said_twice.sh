# Of two moments or priorities of a job none is taken in silence.
cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.* .
sed -i '/^jobs /d' five-jobs.bath
echo '[jobs]
keys 25 lb, bar 1/2 in, for 15 min, due 8:00, due 9:00, must
pins 25 lb, bar 1/2 in, for 15 min, from 6:30, from 7:00
studs 25 lb, bar 1/2 in, for 15 min, must, due 8:00, low
rods 25 lb, bar 1/2 in, for 15 min, low, low' >>five-jobs.bath
boilback plan five-jobs.bath
