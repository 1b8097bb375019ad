#!/bin/sh
# coverage.sh BUILD -- how much of model/ and src/ the tests run through: a build of its own in BUILD/coverage, all unit tests, all
# command-line tests, the manual's, the screen's, and what goes wrong around the program (faults.sh, TRIES of each), then per folder
# the share of lines and of branches (each way of a condition that was taken), and the files that are lowest. Goals: model/ 98 % of
# lines and 92 % of branches, src/ 96 % and 90 %. JUDGE=no runs nothing and counts again.
build=$1/coverage

# tests/faults/faults.c has the counts of a program written that ends with its memory refused, by a function that it must see.
counting() { # target: made, or tested, with counts
    wraps="-Wl,--wrap=raise,--wrap=execlp,--wrap=_exit,-u,__gcov_dump,--export-dynamic-symbol=__gcov_dump"
    LDFLAGS="$build/counts.o $wraps" TRIES=${TRIES:-24} ${MAKE:-make} --no-print-directory BUILD="$build" PAPERS=faults \
        CFLAGS="-O1 -fno-inline -g --coverage" "$1"
}

if [ "${JUDGE:-}" != no ]; then
    find "$build" -name '*.gcda' -exec rm -f {} + 2>/dev/null
    mkdir -p "$build"
    ${CC:-cc} -std=c17 -O1 -fPIC -D_POSIX_C_SOURCE=200809L -c tests/coverage/counts.c -o "$build/counts.o" || exit
    for part in "counting test" "counting stage" "tests/manual.sh $build/stage" "tests/terminal.sh $build/boilback"; do
        $part || echo "coverage: failed: $part: what it did not reach does not count" >&2
    done
fi

# Of each source: lines, how many of them were run, branches, how many were taken.
counted() {
    find "$build/model" "$build/src" -name '*.gcno' | while IFS= read -r notes; do
        gcov -b -n -o "$notes" "${notes%.gcno}.c" 2>/dev/null
    done | awk '
        function share(text,  part) { split(text, part, /[:%]/); return part[2] / 100 }
        /^File / { file = substr($2, 2, length($2) - 2); own = file ~ /^(model|src)\/.*\.c$/; next }
        !own { next }
        /^Lines executed/ { lines[file] = $NF; run[file] = share($0) * $NF; branches[file] += 0 }
        /^Taken at least once/ { branches[file] = $NF; taken[file] = share($0) * $NF }
        END { for (f in lines) printf "%s %d %.0f %d %.0f\n", f, lines[f], run[f], branches[f], taken[f] }' | LC_ALL=C sort
}

counted >"$build/counted"
awk '
    function percent(some, all) { return all > 0 ? 100 * some / all : 100 }
    function row(name, i) { printf "%-24s %6.1f %% of %5d lines %6.1f %% of %5d branches\n", name, percent(r[i], l[i]), l[i], percent(t[i], b[i]), b[i] }
    function add(i) { if (!(i in l)) order[++count] = i; l[i] += $2; r[i] += $3; b[i] += $4; t[i] += $5 }
    { n = split($1, part, "/"); path = part[1]; for (k = 2; k < n; k++) path = path "/" part[k]; add(path); add("all of " part[1]) }
    END {
        for (i = 1; i <= count; i++) if (order[i] !~ /^all/) row(order[i], order[i])
        row("all of model", "all of model"); row("all of src", "all of src")
    }' "$build/counted"
echo "lowest, by branches and lines not reached:"
awk '{ printf "%4d of %4d branches, %3d of %4d lines not reached: %s\n", $4 - $5, $4, $2 - $3, $2, $1 }' "$build/counted" |
    LC_ALL=C sort -rn | head -25
awk '
    { top = substr($1, 1, index($1, "/") - 1); l[top] += $2; r[top] += $3; b[top] += $4; t[top] += $5 }
    END {
        exit !(r["model"] >= 0.98 * l["model"] && t["model"] >= 0.92 * b["model"] && r["src"] >= 0.96 * l["src"] && t["src"] >= 0.90 * b["src"])
    }' "$build/counted" || { echo "coverage: below the goals" >&2; exit 1; }
