#!/bin/sh
# run_tests.sh BUILD TEST... -- run every unit test, two at a time, the command-line tests, the commands that README and guide
# show, the checks of what DEVELOPERS.md names, and the tests of the checks themselves. Says what failed; leaves counts for
# count.sh in BUILD/tests/results.
build=$1
shift
results=$build/tests/results
mkdir -p "$results"
rm -f "$results/unit" "$results/cli" "$results/readme" "$results/checks" "$results/developers"
status=0

unit() {
    printf '%s\n' "$@" | xargs -P 2 -I TEST sh -c '"$0" >"$0.log" 2>&1; echo $? >"$0.status"' TEST
    for test in "$@"; do
        ended=$(cat "$test.status")
        sed -n 's/^\[  SKIPPED \] \([a-z_0-9A-Z]*[a-z][a-z_0-9A-Z]*\)$/SKIPPED: \1/p' "$test.log" | sort -u
        if [ "$ended" -ne 0 ]; then grep -v -e '^\[ RUN' -e '^\[       OK' "$test.log" >&2; fi
        awk -v ended="$ended" '
            /^\[  PASSED  \] [0-9]+ test/ { passed = $4 }
            /^\[  FAILED  \] [0-9]+ test/ { failed = $4 }
            /^\[  SKIPPED \] [0-9]+ test/ { skipped = $4 }
            END { print passed + 0 " passed, " (failed == 0 && ended != 0 ? 1 : failed + 0) " failed, " skipped + 0 " skipped" }
        ' "$test.log"
    done
}

suite() { # name, command...: its output is kept; shown when it fails
    name=$1
    shift
    "$@" >"$results/$name" || { grep -v '^SKIPPED' "$results/$name"; status=1; }
    tail -1 "$results/$name" | sed "s/^/$name: /"
}

unit "$@" >"$results/unit"
grep -q ' 0 failed' "$results/unit" && ! grep -q ' [1-9][0-9]* failed' "$results/unit" || status=1
suite cli tests/run_cli.sh "$build/boilback"
suite readme tests/readme.sh
suite checks tests/checks.sh
suite developers tests/developers.sh
tests/count.sh "$build" || status=1
exit $status
