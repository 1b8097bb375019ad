#!/bin/sh
# packaged.sh BUILD -- tests of what is installed and packed, from the staged tree in BUILD/stage. The slowest goes beside the others.
# Leaves counts for count.sh in BUILD/tests/results.
build=$1
results=$build/tests/results
mkdir -p "$results"

one() { # name, tree
    tests/"$1".sh "$2" >"$results/$1"
    ended=$?
    if [ $ended -ne 0 ]; then grep -v ^SKIPPED "$results/$1"; fi
    tail -1 "$results/$1" | sed "s/^/$1: /"
    return $ended
}

status=0
one schema "$build/stage" &
beside=$!
one install "$build" || status=1
one manual "$build/stage" || status=1
one dist "$build/stage" || status=1
wait $beside || status=1
exit $status
