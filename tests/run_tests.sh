#!/bin/sh
# run_tests.sh BUILD TEST... -- run every unit test and the command-line tests; stop at the first failure. Leaves the number of
# tests passed in BUILD/tests/passed.
build=$1
shift
total=0
log=$build/tests/log
for test in "$@"; do
    "$test" >"$log" 2>&1 || { cat "$log"; exit 1; }
    grep -v -e '^\[ RUN' -e '^\[       OK' "$log"
    count=$(sed -n 's/^\[  PASSED  \] \([0-9]*\) test.*/\1/p' "$log")
    total=$((total + count))
done
tests/run_cli.sh "$build/boilback" >"$log" 2>&1 || { cat "$log"; exit 1; }
tail -1 "$log"
count=$(sed -n 's/^\([0-9]*\) passed, 0 failed$/\1/p' "$log")
tests/readme.sh || exit 1
echo $((total + count)) >"$build/tests/passed"
