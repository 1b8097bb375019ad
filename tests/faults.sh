#!/bin/sh
# faults.sh [--whole] -- what goes wrong around the program: every allocation refused, every call for a file failing, every file cut
# off at some hundred lengths, signals at some of those moments, full disks, closed streams. For each command, each try must end as if
# nothing had happened, or say so with exit status 1; a file under its own name is whole or as it was before, and nothing
# is left beside. Without --whole only some of the moments, spread over all; TRIES=24 in the environment refuses so many allocations
# of each and as many of the last, a third of the slow ones', and of more commands. ONLY='^plan' tries no commands but those it
# matches, so that several of these can go side by side. tests/faults/faults.c makes the faults.
. "$(dirname "$0")/expect.sh"
top=$PWD
program=$top/${BUILD:-build}/boilback
whole=no
[ "$1" = --whole ] && whole=yes
shim=$work/faults.so
LC_ALL=C
BOILBACK_DATA=$top
export LC_ALL BOILBACK_DATA
unset FAULT_MEMORY FAULT_CALL FAULT_SIGNAL FAULT_BYTES FAULT_COUNT

# Programs that come with the person, also for pictures: a stand-in, as the real one is slow and not ours to break.
mkdir "$work/bin"
cat >"$work/bin/gnuplot" <<'END'
#!/bin/sh
{ echo '<?xml version="1.0"?><svg>'; cat ./*.tsv ./*.txt ./*.csv 2>/dev/null | head -c 3000 | tr -d '<&'; echo '</svg>'; } >"$5"
END
chmod +x "$work/bin/gnuplot"
PATH=$work/bin:$PATH

commands="check small.bath
check small.bath --json
run small.bath --full --csv out.csv --step 10s
run small.bath --json --html out.html
run small.bath --brief --plot out.svg
compare small.bath other.bath --csv out.csv
lesson small.bath other.bath --html out.html
plan list.bath --csv out.csv --threads 1
charge small.bath --json
correct small.bath --reads 284degF --level 15in
size small.bath --csv out.csv --table
size small.bath
explore small.bath --samples 16 --threads 1 --csv out.csv
explore --merge rows.csv --json
practise small.bath --script orders.csv --save out.csv
practise small.bath --script reckless.csv --html out.html
fit small.bath log.csv --json
solution --salts 100%NaOH --salt-fraction 50%
solution --salts 100%NaOH --table --from 40% --to 50% --step 1% --csv out.csv"
# What reads, and works out, by other ways than those.
more="check names.bath
check words.bath
check hangs.bath
check stays.bath
check uncertain.bath
check wrong.bath
check wrong_hangs.bath
check wrong_lesson.bath
check wrong_takes.bath
check wrong_waits.bath
check lesson.bath
check five-jobs.bath
run waits.bath --full
run takes.bath --full
lesson lesson.bath
plan odds.bath --odds 95% --threads 1
size small.bath --sheet
size small.bath --interval --load 20lb
size small.bath --load 20lb
charge small.bath --plot out.svg
correct small.bath --reads 287degF --level 17in"
[ $whole = no ] && [ -z "$TRIES" ] || commands="$commands
$more"

anew() { # a folder as it is before
    rm -rf "$work/here" "$work/tmp"
    mkdir "$work/here" "$work/tmp"
    cp "$top"/tests/cli/baths/*.bath "$top"/tests/faults/*.bath "$top"/tests/faults/*.csv "$work/here"
    cp "$top"/scenarios/plan/five-jobs.* "$work/here"
    cp "$top"/scenarios/lessons/03-*.bath "$work/here/lesson.bath"
    cp "$work/here/small.bath" "$work/here/other.bath"
    [ ! -e "$work/rows.csv" ] || cp "$work/rows.csv" "$work/here"
    for name in out.csv out.html out.svg; do echo before >"$work/here/$name"; done
}

# Words are the command's own, and hold no blanks: they are split here. What it says goes through a pipe, which no limit of a file's
# length cuts off.
go() { # NAME=value for the faults, command: what it says into $work/said, how it ends into $ended
    anew
    # shellcheck disable=SC2086
    (
        cd "$work/here" && TMPDIR=$work/tmp && export TMPDIR || exit
        env $1 LD_PRELOAD="$shim" "$program" $2 2>&1 >"$work/stdout" </dev/null
        echo $? >"$work/ended"
    ) 2>/dev/null | cat >"$work/said"
    read -r ended <"$work/ended"
}

keep() { # as the reference
    rm -rf "$work/whole"
    cp -r "$work/here" "$work/whole"
    cp "$work/stdout" "$work/whole.stdout"
    whole_ended=$ended
}

files_are_whole() { # those of the reference or those from before, and no others
    [ -z "$(ls "$work/tmp")" ] || { echo "left in TMPDIR: $(ls "$work/tmp")"; return 1; }
    [ "$(ls -A "$work/here")" = "$(ls -A "$work/whole")" ] || { echo "left: $(ls -A "$work/here")"; return 1; }
    for name in out.csv out.html out.svg; do
        cmp -s "$work/here/$name" "$work/whole/$name" || [ "$(cat "$work/here/$name")" = before ] ||
            { [ $name = out.html ] && grep -q 'no picture in' "$work/said" && grep -q '</html>' "$work/here/$name"; } ||
            { echo "half: $name"; return 1; }
    done
}

is_as_ever() {
    [ $ended -eq $whole_ended ] && cmp -s "$work/stdout" "$work/whole.stdout" && diff -r "$work/here" "$work/whole" >/dev/null
}

says_why() { # pattern: exit status 1 and a reason, or a page without its picture
    { [ $ended -eq 1 ] || grep -q 'no picture in' "$work/said"; } && grep -qi "$1" "$work/said"
}

# Those that seek, and broken off hand out what they have by then.
seeks() {
    case $1 in
    explore* | plan*) ;;
    *) false ;;
    esac
}

# Those that hand out line by line what they have.
goes_by_lines() {
    case $1 in
    explore* | practise*) ;;
    *) false ;;
    esac
}

# Nothing was handed out, but for a study's rows that were made already, and what a shift was told. Where it is a thread that gets none,
# the compiler's runtime says so and ends the program.
fares_without_memory() { # command
    says_why 'out of memory\|thread creation failed' && { [ ! -s "$work/stdout" ] || goes_by_lines "$1"; }
}

# Those that run a scenario again and again.
is_slow() {
    case $1 in
    size* | explore\ s* | fit* | correct* | charge* | plan\ odds*) ;;
    *) false ;;
    esac
}

# Of a command, in all or in short. A table of sizes does the same for several heats; what is written leaves in blocks, so many lengths
# cut it off at the same call.
tries_of() { # command, what
    few=2 many=$TRIES
    if is_slow "$1"; then few=1 many=${TRIES:+$((TRIES / 3 + 1))}; fi
    case $whole$1$2 in
    yes*--table*memory) echo 1500 ;;
    yes*bytes) echo 300 ;;
    yes*signals) echo 40 ;;
    yes*) echo 100000000 ;;
    nosize*--table* | no*bytes | no*signals) echo $few ;;
    *) echo "${many:-$few}" ;;
    esac
}

is_handed_out() { # what there was by then
    seeks "$1" && [ -z "$(ls "$work/tmp")" ]
}

# Spread evenly; where so many are asked for, also each of the last, in which what was found is handed out.
moments() { # how many there are, what, command
    tries=$(tries_of "$3" "$2")
    step=$(($1 / tries + 1))
    seq $((1 + $1 % step / 2)) $step "$1"
    if [ $whole = no ] && [ -n "$TRIES" ] && [ "$2" = memory ]; then seq $(($1 > tries ? $1 - tries + 1 : 1)) "$1"; fi
}

each() { # what, how many, fault, judge, command: every moment or some
    for moment in $(moments "$2" "$1" "$5"); do
        go "$3=$moment $extra" "$5"
        { is_as_ever || $4 "$5"; } && { files_are_whole || is_handed_out "$5"; } || {
            echo "$3=$moment $extra: $5: exit $ended: $(head -c 300 "$work/said")"
            return 1
        }
    done
}

is_ended_by_signal() {
    [ $ended -eq $((128 + signal)) ] || { seeks "$1" && says_why stopped; }
}

signals() { # how many, fault, command: each signal at some of the moments
    [ $whole = yes ] || all_signals=15
    for signal in ${all_signals:-1 2 15}; do
        extra=FAULT_SIGNAL=$signal
        each signals "$1" "$2" is_ended_by_signal "$3" || return 1
    done
}

could_not() {
    says_why 'could not\|no picture\|no temporary\|cannot be\|not where the program' ||
        { [ $ended -eq 2 ] && grep -q 'a run sheet lies in\|a list of jobs lies in' "$work/said"; } # whoever cannot tell where it lies refuses it
}

command_fares() { # command
    extra=
    go "FAULT_COUNT=$work/count" "$1"
    keep
    read -r allocations calls <"$work/count"
    longest=$(cat "$work/stdout" "$work/here"/out.* | wc -c)
    expect "memory refused: $1" each memory "$allocations" FAULT_MEMORY fares_without_memory "$1"
    if [ $whole = no ] && is_slow "$1"; then return; fi
    expect "calls fail: $1" each calls "$calls" FAULT_CALL could_not "$1"
    expect "cut off: $1" each bytes "$longest" FAULT_BYTES could_not "$1"
    expect "signals: $1" signals "$allocations" FAULT_MEMORY "$1"
    expect "signals between files: $1" signals "$calls" FAULT_CALL "$1"
}

streams() { # all three closed in turn, and a full disk: files are whole, and what could not be said is said
    words="run small.bath --csv out.csv"
    go "" "$words"
    keep
    for closed in '<&-' '2>&-' '<&- 2>&-'; do
        (cd "$work/here" && eval "\"$program\" $words >\"$work/stdout\" $closed")
        ended=$?
        { is_as_ever && files_are_whole; } || return 1
    done
    for closed in '>&-' '>/dev/full' '>&- 2>&-' '<&- >&- 2>&-'; do
        (cd "$work/here" && eval "\"$program\" $words 2>\"$work/said\" $closed")
        ended=$?
        [ $ended -eq 1 ] && files_are_whole && cmp "$work/here/out.csv" "$work/whole/out.csv" || return 1
    done
    for full in csv html; do
        (cd "$work/here" && "$program" run small.bath --$full /dev/full >"$work/stdout" 2>"$work/said")
        ended=$?
        could_not && [ $ended -eq 1 ] && files_are_whole || return 1
    done
}

# The superuser may write anywhere but here.
places() { # where nothing can be written
    for place in /proc/out.csv missing/out.csv small.bath/out.csv .; do
        (cd "$work/here" && "$program" run small.bath --csv "$place" >"$work/stdout" 2>"$work/said")
        ended=$?
        could_not && [ $ended -eq 1 ] && cmp "$work/stdout" "$work/whole.stdout" && files_are_whole || return 1
    done
}

# Faults are put before the program by the loader; where that cannot be, they are skipped.
if ! ${CC:-cc} -std=c17 -O1 -shared -fPIC -o "$shim" "$top/tests/faults/faults.c" -ldl 2>"$work/log" ||
    ! LD_PRELOAD=$shim "$program" --version >/dev/null 2>&1; then
    skip "faults: no library can be put before the program here"
    finish
    exit
fi
go "" "explore small.bath --samples 16 --threads 1 --csv out.csv"
cp "$work/here/out.csv" "$work/rows.csv"
IFS='
'
set -f
set -- $commands
set +f
unset IFS
each_is_tried() { # of the commands that help lists
    for name in $("$program" --help | sed -n 's/^  \([a-z][a-z]*\) .*/\1/p'); do
        printf '%s\n' "$commands" | grep -q "^$name " || { echo "nothing goes wrong around $name"; return 1; }
    done
}
expect "every command is tried" each_is_tried
for command in "$@"; do
    printf '%s\n' "$command" | grep -Eq "${ONLY:-.}" || continue
    if [ $whole = yes ] || [ -n "$TRIES" ] || [ "$command" != "size small.bath" ]; then command_fares "$command"; fi
done
expect "closed streams and full disks" streams
expect "places where nothing can be written" places
finish
