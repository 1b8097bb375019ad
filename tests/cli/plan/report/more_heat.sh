# What more heat would do is what it does: planned anew with so much the plan holds, with a tenth only it does not.
sed -e 's/^jobs .*//' -e 's/^settle.*/settle = 60 s\nend = 6:19:20/' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >two.bath
printf '\n[jobs]\nbeams  100 lb, plate 3/8 in, for 15 min\nplates 100 lb, plate 3/8 in, for 15 min\n' >>two.bath
boilback plan two.bath | grep 'times the heat'
for times in 1.1 1.19; do
    sed "s/^input .*/input = $(echo "$times" | awk '{ print 330 * $1 }') kBtu\/h/" two.bath | boilback plan - | sed -n 1p
done
