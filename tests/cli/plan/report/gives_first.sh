# What gives in shift and plant is carried out before any job that could be left out: of those there may be many.
sed -e 's/^jobs .*//' -e 's/^positions .*/positions = 1/' -e 's/^settle .*/&\nend = 7:16/' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >many.bath
{
    echo '[jobs]'
    for i in 1 2 3 4 5 6 7 8; do echo "pins $i 20 lb, plate 1/8 in, for 8 min to 30 min"; done
} >>many.bath
boilback plan many.bath | sed -n '/would do/,/^$/p'
