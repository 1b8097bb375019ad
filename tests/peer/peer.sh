#!/bin/sh
# peer.sh OURS PEER CSV -- the same runs by the library's own steps and by CVODE's: what they cost and how far they are off, against
# explicit steps at a tolerance of 1e-12. Instructions by callgrind, if it is there. Nothing is asserted.
ours=$1 peer=$2 csv=$3
here=$(mktemp -d) || exit 1
trap 'rm -rf "$here"' EXIT

# Millions of instructions within boil_run.
instructions() {
    command -v valgrind >/dev/null || { echo nan; return; }
    valgrind --tool=callgrind --callgrind-out-file=/dev/null --toggle-collect=boil_run "$@" 2>&1 >/dev/null |
        awk '/Collected/ { printf "%.2f\n", $NF / 1e6 }'
}

# The worst differences of two traces: temperature, K, level, m, and ends of quiet spells, s; NaN where they are of other kinds.
differences() {
    awk 'function worse(a, b) { d = a - b; return d < 0 ? -d : d }
        NR == FNR { if ($1 != "took") { a[$1 " " $2] = $3; b[$1 " " $2] = $4; n++ } next }
        $1 == "took" { next }
        !(($1 " " $2) in a) { odd = 1; next }
        { n--; x = worse($3, a[$1 " " $2]); y = worse($4, b[$1 " " $2]) }
        $1 == "row" { if (x > T) T = x; if (y > L) L = y }
        $1 == "quiet" { if (x > q) q = x; if (y > q) q = y }
        END { if (n != 0 || odd) print "nan,nan,nan"; else printf "%.2e,%.2e,%.2e\n", T, L, q }' "$1" "$2"
}

echo "solver,case,tolerance,evaluations,steps,user_ms,million_instructions,temperature_K,level_m,quiet_s" | tee "$csv"
for scenario in scenarios/normal-shift.bath tests/bench/eight-hours.bath scenarios/weekend.bath; do
    "$ours" $scenario 1e-12 plain >"$here/exact" || exit 1
    for solver in ours CVODE; do
        program=$ours
        [ $solver = CVODE ] && program=$peer
        for tolerance in 1e-4 1e-5 1e-6 1e-7 1e-8 1e-9; do
            "$program" $scenario $tolerance >"$here/trace" || continue
            took=$(awk '/^took/ { print $2 "," $3 "," $4 }' "$here/trace")
            echo "$solver,$(basename $scenario .bath),$tolerance,$took,$(instructions "$program" $scenario $tolerance),$(differences "$here/exact" "$here/trace")"
        done
    done
done | tee -a "$csv"
