#!/bin/sh
# mutate.sh BUILD [FILE...] -- how sharp the tests are: one thing at a time is made wrong in one FILE of model/ or src/ (mutants.awk
# says what), and tests are run until one fails: first the unit test of its own name, then those of its folder, then those that
# include its header, and last command-line tests. What all of them let pass survives, and is shown. Without a FILE: 200 of the model
# and of what grades and prints (whole.sh), two hours of a processor.
#     SEED=1      which mutants are drawn
#     LIMIT=60    s of the processor a test has before it counts as an endless loop
#     MUTANTS=50  at most so many of all files together; 0: all
#     ONLY=comparisons   no other mutants than those of < <= > >= == !=
#     UNIT="..."  unit tests, as tests/unit/model/case/test_grading, in place of those
#     CASES=...   command-line tests, as run_cli.sh takes them; those of the commands that show what the file does unless it says so
#     AGAIN=yes   what survived is tried once more
# What has been tried stands in BUILD/mutate/tried.*, a line each as it ends, in a drawn order: broken off, it is a fair sample, and the
# same call goes on from there. A test that fails on the sound program is left out. What the compiler refuses, or makes the same object
# of, is no mutant. A survivor that no test can kill, or that none need, stands in `survivors` with the reason, and counts apart.
here=$(cd "$(dirname "$0")" && pwd)
top=$(cd "$here/../.." && pwd)
build=$1
shift
tree=$build/mutate/tree
mkdir -p "$tree"
# What differs is copied and so is newer than what was built of it: the tree that is worked in may change meanwhile.
(cd "$top" && find Makefile README.md DEVELOPERS.md model src tests scenarios plots -type f) | while IFS= read -r name; do
    if ! cmp -s "$top/$name" "$tree/$name"; then
        mkdir -p "$tree/$(dirname "$name")"
        cp -p "$top/$name" "$tree/$name"
        touch "$tree/$name"
    fi
done
(cd "$tree" && find model src tests -type f) | while IFS= read -r name; do [ -e "$top/$name" ] || rm -f "$tree/$name"; done
made=$(cd "$build/mutate" && pwd)
cd "$tree" || exit 2
# What was built of files that are gone would be linked still.
find build/src -name '*.o' 2>/dev/null | while IFS= read -r object; do
    of=${object#build/}
    [ -f "${of%.o}.c" ] || [ -f "${of%.o}" ] || rm -f "$object"
done
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT

make_it() { ${MAKE:-make} --no-print-directory -s BUILD=build WERROR= "$@" >"$work/build.log" 2>&1; }

# shellcheck disable=SC2016 # for make
variable() { printf 'show:;@echo $(%s)\n' "$1" | ${MAKE:-make} --no-print-directory -s -f Makefile -f - show; }

exist() { awk '!seen[$0]++' | while IFS= read -r test; do if [ -e "$test" ]; then echo "${test%.c}"; fi; done; }

# What the whole model refuses is asked for in one place.
refusals="tests/unit/model/test_refused_input.c tests/unit/model/case/test_limits.c"

# The unit tests of a file, by how near they are; of a folder without any those of the one it lies in. The one that refuses memory
# needs a link of its own.
nearest() { # file, rank 1 to 3
    folder=tests/unit/$(dirname "$1")
    [ -d "$folder" ] || folder=$(dirname "$folder")
    case ${UNIT:+own}$2 in
    own1) echo "$UNIT" | tr ' ' '\n' | sed 's,$,.c,' ;;
    own*) ;;
    1) echo "$folder/test_$(basename "$1")" ;;
    2) find "$folder" -maxdepth 1 -name 'test_*.c' 2>/dev/null | LC_ALL=C sort ;;
    3) case $1 in model/*) echo "$refusals" | tr ' ' '\n' ;; esac
        grep -l "\"$(echo "${1%.c}.h" | sed 's,^[^/]*/,,')\"" -r tests/unit --include='test_*.c' | LC_ALL=C sort ;;
    esac | grep -v test_refused_memory | exist
}

cases_of() { # file
    if [ -n "${CASES:-}" ]; then echo "$CASES"; return; fi
    case $1 in
    src/commands/*) echo "$1" | sed 's,src/commands/\([a-z]*\)/.*,^\1/,' ;;
    src/replay/*) echo '^(lesson|run/lesson)/' ;;
    src/lesson/*) echo '^(lesson/report|check/lesson|practise/(lines|save))/' ;;
    src/practise/*) echo '^practise/' ;;
    src/jobs/*) echo '^plan/' ;;
    src/pictures/*) echo '^(run|size|explore)/picture/' ;;
    src/base/*) echo '^(run|check|solution)/' ;;
    src/describe/*) echo '^(check|run/(report|json|screen))/' ;;
    model/analysis/* | model/sizing/* | model/design/*) echo '^(charge|correct|size)/' ;;
    model/plan/* | model/planning/*) echo '^plan/' ;;
    model/statistics/*) echo '^(explore|fit)/' ;;
    *) echo '^run/(report|json|screen)/' ;;
    esac
}

# The processor's time, since others may want it as well; by the clock only what hangs. 4 GB, or a mutant that gathers without end
# takes all there is.
within() { (
    # shellcheck disable=SC3045 # every shell that is sh has it
    ulimit -t "${LIMIT:-60}"
    # shellcheck disable=SC3045 # likewise
    ulimit -v 4000000
    timeout 3600 "$@" >"$work/said" 2>&1
); }

by_cases() { # program, cases
    CASES=$2 STOP=yes within tests/run_cli.sh "$1"
    tail -1 "$work/said" | grep -q ' 0 failed'
}

# A test is tried on the sound program once, when it has failed on another.
is_sound() { # name, command...
    name=$1
    shift
    grep -Fqx -- "$name" "$work/sound" && return 0
    if "$@"; then echo "$name" >>"$work/sound"; return 0; fi
    echo "mutate: $name is left out" >&2
    echo "$name" >>"$work/out"
    return 1
}

fails_unit() { # test
    grep -Fqx -- "$1" "$work/out" && return 1
    if ! grep -Fqx -- "$1" "$work/made"; then
        make_it "build/$1" || { cat "$work/build.log" >&2; return 1; }
        echo "$1" >>"$work/made"
    fi
    wrapped=
    grep -q '"support/refused.h"' "$1.c" && wrapped=$wraps # its allocations go through it, as Makefile has it
    # shellcheck disable=SC2086 # one word a library
    $link $wrapped "build/$1.o" "$work/mutant.o" "$made/parts.a" build/libboilback.a $libraries -lcmocka -o "$work/test" || return 1
    ! within "$work/test" && is_sound "$1" within "build/$1"
}

fails_cases() { # cases
    grep -Fqx -- "$1" "$work/out" && return 1
    mkdir -p "$work/bin"
    # shellcheck disable=SC2086 # one word a library
    $link build/src/main.o "$work/mutant.o" "$made/parts.a" build/libboilback.a $libraries -o "$work/bin/boilback" || return 1
    ! by_cases "$work/bin/boilback" "$1" && is_sound "$1" by_cases build/boilback "$1"
}

killed() { # file: by what; nothing: it survives
    tried_now=
    for rank in 1 2 3; do
        for test in $(nearest "$1" $rank); do
            case " $tried_now " in *" $test "*) continue ;; esac
            tried_now="$tried_now $test"
            if fails_unit "$test"; then echo "${test##*/}"; return; fi
        done
    done
    if [ "${CASES:-}" != none ] && fails_cases "$(cases_of "$1")"; then echo "command line"; fi
}

# All mutants of all files, in an order that the seed and each one's own text give, the first so many of them: a line that changes
# elsewhere draws no others.
draw() {
    for name in "$@"; do
        awk -f "$here/mutants.awk" "$name" | awk -v name="$name" '
            NR == FNR { of[FNR] = $0; next }
            { print name, $0 "\t" of[$1] }' "$name" -
    done |
        if [ "${ONLY:-}" = comparisons ]; then grep -E ' (<|<=|>|>=|==|!=)	'; else cat; fi |
        LC_ALL=C awk -v seed="${SEED:-1}" -f "$here/order.awk" | LC_ALL=C sort -n | cut -f2 |
        awk -v most="${MUTANTS:-50}" 'most == 0 || NR <= most'
}

# By the environment, where a backslash stays one.
mutated() { # file line column length text: the file as it becomes
    text=$5 awk -v line="$2" -v column="$3" -v long="$4" '
        NR == line { $0 = substr($0, 1, column - 1) ENVIRON["text"] substr($0, column + long) }
        { print }' "$1"
}

# Beside the headers that it includes. Without -g, or a column would make an object of its own.
try() { # file line column length text, whose blanks are its own: how it ended
    read -r file line column long text <<END
$1
END
    cp "$file" "$work/mutant.c"
    $compile -I"$(dirname "$file")" -c "$work/mutant.c" -o "$work/sound.o"
    mutated "$file" "$line" "$column" "$long" "$text" >"$work/mutant.c"
    if ! $compile -I"$(dirname "$file")" -c "$work/mutant.c" -o "$work/mutant.o" 2>"$work/build.log" ||
        cmp -s "$work/mutant.o" "$work/sound.o"; then
        echo none
        return
    fi
    by=$(killed "$file" </dev/null)
    if [ -n "$by" ]; then echo "killed by $by"; else echo survived; fi
}

make_it build/boilback || { cat "$work/build.log" >&2; exit 2; }
compile="$(variable CC) $(variable BASE) -Isrc -O2 -w"
link="$(variable CC) -s"
libraries=$(variable LDLIBS)
wraps=$(variable WRAPS)
rm -f "$made/parts.a"
find build/src -name '*.o' -not -name main.o -not -path 'build/src/manual/*' | LC_ALL=C sort | xargs ar rcs "$made/parts.a"
: >"$work/made"
: >"$work/sound"
: >"$work/out"
# shellcheck disable=SC2046 # one word a file
if [ $# -gt 0 ]; then draw "$@"; else MUTANTS=${MUTANTS:-200} && draw $("$here/whole.sh"); fi >"$work/mutants"
while read -r file line column long text; do
    name=$(mutated "$file" "$line" "$column" "$long" "$text" | sed -n "${line}{s/^ *//;p;q;}")
    printf '%s\t%s: %s\n' "$file $line $column $long $text" "$file" "$name"
done <"$work/mutants" >"$work/named"
tried=$made/tried.$(cksum <"$work/named" | cut -d' ' -f1)
touch "$tried"
if [ "${AGAIN:-no}" = yes ]; then grep -v '^survived' "$tried" >"$work/kept"; cp "$work/kept" "$tried"; fi
while IFS='	' read -r where name; do
    grep -Fq -- "	$where	" "$tried" && continue
    printf '%s\t%s\t%s\n' "$(try "$where")" "$where" "$name" >>"$tried"
done <"$work/named"
awk -f "$here/score.awk" "$here/survivors" "$tried"
