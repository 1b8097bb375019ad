#!/bin/sh
# Runs every tests/cli/COMMAND/GROUP/NAME.sh with the program on the path, in an empty folder that holds copies of the scenarios, and
# compares what it wrote and how it ended with NAME.stdout, NAME.stderr (missing: nothing) and NAME.exit (missing: 0).
#     run_cli.sh PROGRAM            compares; the last line is "N passed, N failed, N skipped"
# A case that ends with 77 lacks what it needs, and is skipped; same_text.sh says what the same is.
#     run_cli.sh --golden PROGRAM   rewrites what is expected; a person reads the difference
# CASES='^(run|compare)/' in the environment takes only the names that it matches; STOP=yes ends at the first that fails.
golden=no
if [ "$1" = --golden ]; then
    golden=yes
    shift
fi
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: run_cli.sh [--golden] PROGRAM" >&2
    exit 2
fi

. "$(dirname "$0")/same_text.sh"
cases=$(cd "$(dirname "$0")/cli" && pwd) || exit 2
PATH=$(cd "$(dirname "$1")" && pwd):$PATH
LC_ALL=C
NO_COLOR=
BOILBACK_DATA=$(cd "$cases/../.." && pwd)
export PATH LC_ALL NO_COLOR BOILBACK_DATA
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT

run_case() { # name, folder: writes got.stdout, .stderr, .exit there
    mkdir -p "$2/here"
    cp "$cases"/baths/*.bath "$2/here"
    (cd "$2/here" && sh "$cases/$1.sh") >"$2/got.stdout" 2>"$2/got.stderr" </dev/null
    echo $? >"$2/got.exit"
    rm -rf "$2/here"
}

keep() { # name, folder
    cp "$2/got.stdout" "$cases/$1.stdout"
    rm -f "$cases/$1.exit"
    grep -qx 0 "$2/got.exit" || cp "$2/got.exit" "$cases/$1.exit"
    rm -f "$cases/$1.stderr"
    if [ -s "$2/got.stderr" ]; then cp "$2/got.stderr" "$cases/$1.stderr"; fi
}

same() { # name, folder: shows each difference
    agreed=0
    for part in stdout stderr exit; do
        expected=$cases/$1.$part
        if [ ! -e "$expected" ]; then expected=$work/missing.$part; fi
        if [ $part = exit ]; then diff -u "$expected" "$2/got.$part"; else same_text "$expected" "$2/got.$part"; fi || agreed=1
    done
    return $agreed
}

# Every other case, so that two processors share them. Leaves a line "passed", "failed" or "skipped" for each.
worker() { # 0 or 1
    number=0
    for script in "$cases"/*/*/*.sh; do
        name=${script#"$cases"/}
        name=${name%.sh}
        echo "$name" | grep -Eq "${CASES:-.}" || continue
        number=$((number + 1))
        [ $((number % 2)) -eq "$1" ] || continue
        if [ "${STOP:-no}" = yes ] && grep -qs failed "$work"/[01]/results; then break; fi
        run_case "$name" "$work/$1"
        if grep -qx 77 "$work/$1/got.exit"; then
            echo "SKIPPED: tests/cli/$name"
            echo skipped >>"$work/$1/results"
        elif [ $golden = yes ]; then
            keep "$name" "$work/$1"
        elif same "$name" "$work/$1"; then
            echo passed >>"$work/$1/results"
        else
            echo "FAILED: $name"
            echo failed >>"$work/$1/results"
        fi
    done
}

mkdir "$work/0" "$work/1"
: >"$work/missing.stdout"
: >"$work/missing.stderr"
echo 0 >"$work/missing.exit"
worker 0 >"$work/0/log" 2>&1 &
worker 1 >"$work/1/log" 2>&1
wait
cat "$work"/[01]/log
if [ $golden = yes ]; then
    [ -z "$BUILT_BY" ] || echo "$BUILT_BY" >"$cases/written_by"
    exit 0
fi
passed=$(cat "$work"/[01]/results | grep -c passed)
failed=$(cat "$work"/[01]/results | grep -c failed)
skipped=$(cat "$work"/[01]/results | grep -c skipped)
find "$cases" -name '*.sh' -not -path "$cases/*/*/*.sh" | sed 's,$,: belongs into tests/cli/COMMAND/GROUP,' >&2
echo "$passed passed, $failed failed, $skipped skipped"
[ "$failed" -eq 0 ] && [ $((passed + skipped)) -eq "$(find "$cases" -name '*.sh' | wc -l)" ]
