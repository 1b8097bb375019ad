#!/bin/sh
# Runs every tests/cli/NAME.sh with the program on the path, in an empty folder that holds copies of the scenarios, and
# compares what it wrote and how it ended with NAME.stdout, NAME.stderr (missing: nothing) and NAME.exit.
#     run_cli.sh PROGRAM            compares; the last line is "N passed, N failed"
#     run_cli.sh --golden PROGRAM   rewrites what is expected; a person reads the difference
golden=no
if [ "$1" = --golden ]; then
    golden=yes
    shift
fi
if [ $# -ne 1 ] || [ ! -x "$1" ]; then
    echo "usage: run_cli.sh [--golden] PROGRAM" >&2
    exit 2
fi

cases=$(cd "$(dirname "$0")/cli" && pwd) || exit 2
PATH=$(cd "$(dirname "$1")" && pwd):$PATH
LC_ALL=C
NO_COLOR=
BOILBACK_DATA=$(cd "$cases/../.." && pwd)
export PATH LC_ALL NO_COLOR BOILBACK_DATA
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT

run_case() { # name: writes $work/got.stdout, .stderr, .exit
    mkdir "$work/here"
    cp "$cases"/*.bath "$work/here"
    (cd "$work/here" && sh "$cases/$1.sh") >"$work/got.stdout" 2>"$work/got.stderr" </dev/null
    echo $? >"$work/got.exit"
    rm -rf "$work/here"
}

keep() { # name
    cp "$work/got.stdout" "$cases/$1.stdout"
    cp "$work/got.exit" "$cases/$1.exit"
    rm -f "$cases/$1.stderr"
    if [ -s "$work/got.stderr" ]; then cp "$work/got.stderr" "$cases/$1.stderr"; fi
}

same() { # name: shows each difference
    agreed=0
    for part in stdout stderr exit; do
        expected=$cases/$1.$part
        [ -e "$expected" ] || expected=/dev/null
        diff -u "$expected" "$work/got.$part" || agreed=1
    done
    return $agreed
}

passed=0
failed=0
for script in "$cases"/*.sh; do
    name=$(basename "$script" .sh)
    run_case "$name"
    if [ $golden = yes ]; then
        keep "$name"
    elif same "$name"; then
        passed=$((passed + 1))
    else
        echo "FAILED: $name"
        failed=$((failed + 1))
    fi
done
[ $golden = yes ] || echo "$passed passed, $failed failed"
[ $failed -eq 0 ]
