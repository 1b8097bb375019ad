#!/bin/sh
# run_tests.sh BUILD PAPERS TEST... -- run every unit test, two at a time, then the command-line tests and beside them PAPERS: of the
# commands that README and guide show (readme), the tests of the checks themselves (checks), what DEVELOPERS.md names (developers) and
# what goes wrong around the program (faults) those that are asked for. Says what failed; leaves counts for count.sh in BUILD/tests/results.
build=$1
papers=$2
shift 2
results=$build/tests/results
mkdir -p "$results"
rm -f "$results/unit" "$results/cli" "$results/readme" "$results/checks" "$results/developers" "$results/faults"
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
    "$@" >"$results/$name"
    ended=$?
    if [ $ended -ne 0 ]; then grep -v '^SKIPPED' "$results/$name"; fi
    tail -1 "$results/$name" | sed "s/^/$name: /"
    return $ended
}

read_papers() {
    all=0
    for paper in $papers; do suite "$paper" "tests/$paper.sh" || all=1; done
    return $all
}

unit "$@" >"$results/unit"
grep -q ' 0 failed' "$results/unit" && ! grep -q ' [1-9][0-9]* failed' "$results/unit" || status=1
read_papers &
beside=$!
suite cli tests/run_cli.sh "$build/boilback" || status=1
wait $beside || status=1
tests/count.sh "$build" || status=1
exit $status
