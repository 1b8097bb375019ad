#!/bin/sh
# mutate.sh BUILD FILE... -- how sharp the tests are: in a copy of the tree, in BUILD/mutate, one thing at a time is made wrong in
# each FILE of model/ or src/ (mutants.awk says what), and tests are run until one fails: first the unit tests of its folder, that
# of its own name before the others, then command-line tests. What all of them let pass survives, and is shown.
#     SEED=1      which mutants are drawn
#     LIMIT=30    s a test has before it counts as an endless loop
#     MUTANTS=50  at most so many of all files together; 0: all
#     UNIT="..."  unit tests, as tests/unit/model/case/test_grading, in place of those
#     CASES=...   command-line tests, as run_cli.sh takes them; those of the file's command, or of run, unless it says so
# A test that takes longer than that has met an endless loop: the mutant is killed. A test that does so on the sound tree is left
# out. What the compiler refuses is no mutant.
here=$(cd "$(dirname "$0")" && pwd)
top=$(cd "$here/../.." && pwd)
build=$1
shift
if [ $# -eq 0 ]; then
    echo 'usage: make mutate FILES="model/case/grading.c ..."' >&2
    exit 2
fi
tree=$build/mutate/tree
mkdir -p "$tree"
# What differs is copied and so is newer than what was built of it: also what a mutation that was broken off has left.
(cd "$top" && find Makefile README.md DEVELOPERS.md model src tests scenarios plots -type f) | while IFS= read -r name; do
    if ! cmp -s "$top/$name" "$tree/$name"; then
        mkdir -p "$tree/$(dirname "$name")"
        cp -p "$top/$name" "$tree/$name"
        touch "$tree/$name"
    fi
done
tree=$(cd "$tree" && pwd)
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
cd "$tree" || exit 2

build_all() { ${MAKE:-make} --no-print-directory -s BUILD=build WERROR= build/boilback "$@" >"$work/build.log" 2>&1; }

tests_of() { # file: its unit tests, the nearest first
    if [ -n "${UNIT:-}" ]; then
        echo "$UNIT" | tr ' ' '\n' | sed 's,^,build/,'
        return
    fi
    folder=tests/unit/$(dirname "$1")
    {
        echo "$folder/test_$(basename "$1")"
        find "$folder" -maxdepth 1 -name 'test_*.c' 2>/dev/null | LC_ALL=C sort
        grep -l "\"$(echo "${1%.c}.h" | sed 's,^[^/]*/,,')\"" -r tests/unit --include='test_*.c' | LC_ALL=C sort
    } | awk '!seen[$0]++' | while IFS= read -r test; do
        if [ -e "$test" ]; then echo "build/${test%.c}"; fi
    done
}

cases_of() { # file
    if [ -n "${CASES:-}" ]; then
        echo "$CASES"
    else
        case $1 in
        src/commands/*) echo "$1" | sed 's,src/commands/\([a-z]*\)/.*,^\1/,' ;;
        *) echo '^run/(report|json|screen)/' ;;
        esac
    fi
}

# The mutant's line, column, length and text are put into the file.
apply() {
    awk -v line="$1" -v column="$2" -v long="$3" -v text="$4" '
        NR == line { $0 = substr($0, 1, column - 1) text substr($0, column + long) }
        { print }' "$top/$file" >"$file"
}

killed() { # file: by what; nothing: it survives
    while IFS= read -r test; do
        timeout "${LIMIT:-30}" "$test" >/dev/null 2>&1 || { echo "$test" | sed 's,.*/,,'; return; }
    done <"$work/tests"
    CASES=$(cases_of "$1") STOP=yes timeout 300 tests/run_cli.sh build/boilback 2>&1 | tail -1 | grep -q ' 0 failed' ||
        echo "command line"
}

draw() { # all mutants of all files, shuffled by the seed, the first so many of them
    for name in "$@"; do awk -f "$here/mutants.awk" "$top/$name" | sed "s,^,$name ,"; done |
        awk -v seed="${SEED:-1}" 'BEGIN { srand(seed) } { print rand() "\t" $0 }' | LC_ALL=C sort | cut -f2- |
        awk -v most="${MUTANTS:-50}" 'most == 0 || NR <= most' | LC_ALL=C sort -s -k1,1
}

begin() { # file: its tests are built and tried on the sound tree
    tests_of "$1" >"$work/all"
    # shellcheck disable=SC2046 # one word a test
    build_all $(cat "$work/all") || { cat "$work/build.log" >&2; exit 2; }
    : >"$work/tests"
    while IFS= read -r test; do
        if timeout "${LIMIT:-30}" "$test" >/dev/null 2>&1; then echo "$test" >>"$work/tests"; else echo "mutate: $test is left out" >&2; fi
    done <"$work/all"
}

draw "$@" >"$work/mutants"
: >"$work/ends"
last=
while read -r file line column long text; do
    if [ "$file" != "$last" ]; then begin "$file"; fi
    last=$file
    apply "$line" "$column" "$long" "$text"
    # shellcheck disable=SC2046
    if build_all $(cat "$work/tests"); then
        by=$(killed "$file" </dev/null)
        echo "${by:-survived}" >>"$work/ends"
        if [ -z "$by" ]; then
            echo "SURVIVED $file:$line: $(sed -n "${line}s/^ *//p" "$file")"
        fi
    fi
    cp "$top/$file" "$file"
done <"$work/mutants"
awk '{ all++; if ($0 == "survived") left++ } END { printf "%d mutants, %d killed, %d survived: %.0f %%\n", all, all - left, left, all ? 100 * (all - left) / all : 0 }' "$work/ends"
