# Why no further plan was made with the odds that were asked for: more draws never boil again than may fail; or who leaves more time hangs
# the job in two baskets, and the second is late.
plan() { # uncertain, job
    sed -e 's/^jobs .*//' "$BOILBACK_DATA/scenarios/plan/five-jobs.bath" >one.bath
    printf '\n[uncertain]\n%s\n\n[jobs]\n%s\n' "$1" "$2" >>one.bath
    boilback plan one.bath --odds '95 %' >report
    echo "exit $?"
    sed -n '1,/^ What is known/p' report
}
plan 'heat efficiency = 5 % to 70 %' 'beams 40 lb, plate 3/8 in, 6 pieces, for 15 min, basket 12 lb, may split'
plan 'heat efficiency = 44 % to 70 %' 'beams 95 lb, plate 3/8 in, 6 pieces, for 15 min, basket 12 lb, may split, due 6:18, must'
