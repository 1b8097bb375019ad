#!/bin/sh
# fuzz.sh BUILD SECONDS TARGET... -- each target of tests/fuzz for so long, from what it found before (BUILD/corpus) and the examples
# at hand. Says how many inputs were tried and accepted; what broke something stays in BUILD, and ends it with 1.
build=$1 seconds=$2
shift 2
status=0

seeds_of() { # target, folder
    case $1 in
    scenario) cp scenarios/*.bath scenarios/lessons/*.bath tests/cli/baths/*.bath "$2" ;;
    csv) cp scenarios/*.csv tests/faults/sheet.csv tests/faults/log.csv "$2" ;;
    run) cp tests/faults/*.bath "$2" ;;
    quantity) for text in '1 1/2 in' '285 degF' '60 %' '4 to 1' '1:30:05' '1 lb per 2 gal' '-3.5 kPa'; do
        echo "$text" >"$2/$(echo "$text" | tr -c 'a-z0-9\n' _)"; done ;;
    options) printf -- '--units\0si\0--csv=x.csv\0a.bath\0' >"$2/options" ;;
    esac
}

for target in "$@"; do
    mkdir -p "$build/corpus/$target" "$build/seeds/$target"
    seeds_of "$target" "$build/seeds/$target"
    "$build/tests/fuzz/$target" -max_total_time="$seconds" -max_len=8000 -timeout=300 -rss_limit_mb=2048 -print_final_stats=1 \
        -artifact_prefix="$build/$target-" "$build/corpus/$target" "$build/seeds/$target" >"$build/$target.log" 2>&1 || status=1
    awk -v target="$target" '/^tried [0-9]/ { printf "%s: %d tried, %d accepted, %.1f %%\n", target, $2, $4, 100 * $4 / ($2 > 0 ? $2 : 1) }' \
        "$build/$target.log"
    grep -a -A12 -e '^==.*ERROR' -e '^not so' -e 'runtime error' "$build/$target.log"
done
exit $status
