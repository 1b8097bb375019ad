#!/bin/sh
# count.sh BUILD... -- the closing line: what passed, failed and was skipped in all builds together, from the files that
# the tests left in BUILD/tests/results; each holds a line "N passed, N failed, N skipped" and a line "SKIPPED: what" for each
# that was skipped.
for build in "$@"; do cat "$build"/tests/results/*; done | awk '
    /^[0-9]+ passed, [0-9]+ failed, [0-9]+ skipped$/ { passed += $1; failed += $3; skipped += $5 }
    sub(/^SKIPPED: /, "") && !(name[$0]++) { names = names (names == "" ? ": " : "; ") $0 }
    END {
        print passed + 0 " passed, " failed + 0 " failed, " skipped + 0 " skipped" names
        exit passed == 0 || failed > 0
    }'
