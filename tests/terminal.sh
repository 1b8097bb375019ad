#!/bin/sh
# terminal.sh PROGRAM -- the screen of `practise` in terminals of several sizes and kinds: what it shows, what keys do, and that the
# terminal is given back as it was, whatever ends it. Needs tmux, and is skipped where there is none. The last line is
# "N passed, N failed, N skipped".
program=$(cd "$(dirname "${1:-build/boilback}")" && pwd)/boilback
. "$(dirname "$0")/expect.sh"
bath=$PWD/scenarios/lessons/01-water-while-it-boils.bath
if ! command -v tmux >/dev/null; then
    skip "the screen of practise (no tmux)"
    finish
    exit
fi
mux() { tmux -S "$work/socket" -f /dev/null "$@"; }
trap 'mux kill-server 2>/dev/null; rm -rf "$work"' EXIT

begin() { # columns rows: a shell in an empty folder
    mux kill-session -t t 2>/dev/null
    rm -rf "$work/here"
    mkdir "$work/here"
    mux new-session -d -s t -x "$1" -y "$2" -c "$work/here" "PS1='ready ' TERM=screen sh"
    seen ready
}

press() { mux send-keys -t t "$@"; }
show() { mux capture-pane -p -t t; }

# How often is looked, five times a second, before something fails: an eruption shown at half speed takes six seconds, a search of a
# program that counts its branches, on a machine that does other work, ten times as long as any other.
looks=$(seq 300)

seen() { # pattern: it comes
    for _ in $looks; do
        show >"$work/pane"
        if grep -q -e "$1" "$work/pane"; then return 0; fi
        sleep 0.2
    done
    cat "$work/pane"
    return 1
}

seen_no() { # pattern: it is there no more
    for _ in $looks; do
        show >"$work/pane"
        if ! grep -q -e "$1" "$work/pane"; then return 0; fi
        sleep 0.2
    done
    cat "$work/pane"
    return 1
}

practise() { # options: begun, with the terminal's state noted
    press "clear; stty -g >before" Enter "$program practise $bath $*" Enter
    seen "^Goal: Water only" && press Enter && seen "running" && press Space && seen "PAUSED"
}

process() { mux list-panes -t t -F '#{pane_pid}' | xargs -I PID pgrep -P PID -x boilback; }

state() { ps -o state= -p "$(process)" 2>/dev/null; }

is_now() { # state, nothing where it has ended: the main screen is back a while before, and what is typed meanwhile is the program's
    for _ in $looks; do
        [ "$(state)" != "$1" ] || return 0
        sleep 0.2
    done
    return 1
}

is_given_back() { # exit status: the same state, cursor and main screen
    is_now "" && seen "ready *$" && press "ended=\$?; stty -g >after; echo ended \$ended" Enter && seen "ended $1$" &&
        cmp "$work/here/before" "$work/here/after" && [ "$(mux display -p -t t '#{cursor_flag}#{alternate_on}')" = 10 ]
}

is_plain() { # no line over 80 columns, nothing but ASCII
    show >"$work/pane"
    ! awk 'length($0) > 80' "$work/pane" | grep -q . && ! LC_ALL=C grep -q '[^ -~]' "$work/pane"
}

begin 80 24
expect "it begins with what it is about, and stands" practise
expect "it is plain" is_plain
press Space
expect "the clock runs" seen "9:00:[1-9].* running"
press Space
expect "and stands" seen "PAUSED"
press 7
expect "a key that does nothing is said, and how to leave" seen "No such key: ? shows the keys, q leaves"
press w
expect "a key opens an act" seen "what: water 2 gal over 4 min_"
press C-u "watr 2 gal" Enter
expect "a mistake is said, and the line kept" seen "unknown act 'watr'"
press C-u "when boiling for 1 min water 1 gal over 2 min" Enter
expect "what waits is shown" seen "waits when boiling for 1 min: water 1 gal"
expect "and done" seen "9:0[0-9:]*  water 1 gal over 2 min"
press n
expect "until something happens" seen "the water is in\|the load stops the boil"
press b
expect "back" seen "Back to just before it"
press "?"
expect "keys" seen "ready-mixed liquid"
press Enter q f C-u "kept.bath" Enter q
expect "left, and kept" is_given_back 0
expect "what is kept is a scenario" grep -q '^pass' "$work/here/kept.bath"

begin 80 24
practise --units si --speed 20
press ">"
expect "faster" seen " 60x"
press "<" "<"
expect "slower" seen " 5x"
press "<" "<" "<" "."
expect "a second at a time, at a speed that is not below the clock's" seen "9:00:0[1-9].* 1x *PAUSED"
press ">" ">" ">" ">" ">" ">"
expect "nor above what there is" seen " 300x"
press m
expect "what is off is offered on" seen "what: mixer on_"
press Enter
expect "it is done" seen "9:00:0[0-9]  mixer on"
press Space m
expect "what is on is offered off" seen "what: mixer off_"
press Escape h Enter
expect "the heat as usual" seen "  heat 50 %"
press Space h C-w C-w "20 %" Enter
expect "a word less, and another" seen "  heat 20 %"
press Space h
expect "the last of them is offered again" seen "what: heat 20 %_"
press BSpace BSpace BSpace BSpace Escape l
expect "what is usual is in the person's units" seen "what: load 20 kg, plate 6 mm, for 15 min_"
press C-u "0:20 water 1 L" Enter
expect "what is for later waits for something else than a time" seen "Acts are done now here"
press C-u state Enter
expect "what is a key is none of the acts" seen "Here that is a key"
press C-u Enter
expect "nothing is nothing" seen "w water  l load"
press a "when boiling for 50 min water 1 L over 1 min" Enter
expect "what waits is shown" seen "waits when boiling for 50 min: water 1 L"
press x
expect "and given up" seen_no "waits when"
press Space g
expect "the briefing again" seen "^Goal: Water only"
press C-l q
expect "from a page to the question" seen "^ Leave?"
press d
expect "from there to the debrief" seen "[0-9] of 4 terms hold"
press Space - k q Enter
expect "left" is_given_back 0

begin 80 24
practise --speed 300x
expect_over() { # the clock stands at each question of the lesson, and at what is found
    for _ in $(seq 60); do
        show | grep -q '^ *9:30:00.*OVER' && return
        press Space
        sleep 1
    done
    show
    return 1
}
expect "its end" expect_over
press w
expect "and nothing more is done" seen "The shift is over.  b: before the last act"
press q q
expect "left over" is_given_back 0

for key in running typing asking; do
    begin 80 24
    practise
    case $key in running) press Space ;; typing) press w ;; asking) press q ;; esac
    sleep 0.3
    press C-c
    expect "Ctrl-C while $key" is_given_back 130
done

begin 80 24
practise
press w Enter
expect "an act is done" seen "water 2 gal over 4 min"
press "?"
expect "keys" seen "ready-mixed liquid"
press C-c
expect "Ctrl-C asks before what was done is lost" seen "^ Leave?   q: leave   f: keep the shift in a file"
press Escape
expect "and who stays is at the bath" seen "w water  l load"
press C-c f Enter C-c
expect "kept first" is_given_back 130
expect "in a file" test -s "$work/here/worked.bath"
press "clear" Enter
practise
press w Enter
expect "an act is done" seen "water 2 gal over 4 min"
press C-c f
expect "and the next one in another" seen "file: worked-2.bath_"
press Escape C-c C-c
expect "twice leaves" is_given_back 130

begin 80 24
practise
press w Enter
expect "an act is done" seen "water 2 gal over 4 min"
press q f C-u "none/there.bath" Enter q
expect "where it cannot be kept another place is asked for" seen "^keep the shift in (empty: nowhere):"
press "there.bath" Enter
expect "and the shift not lost" seen "^kept in there.bath"
expect "left as ever" is_given_back 0

for signal in 15 1 2; do
    begin 80 24
    practise
    press Space
    kill -$signal "$(process)"
    expect "ended by signal $signal" is_given_back $((128 + signal))
done

begin 80 24
practise
press Space
sleep 0.3
press C-z
expect "stopped" is_now T
expect "stopped: the shell has its terminal" seen "^ready *$"
press "stty -g >stopped; echo noted \$?" Enter
expect "stopped: it answers" seen "noted 0$"
expect "stopped: as it was" cmp "$work/here/before" "$work/here/stopped"
press "fg" Enter
expect "gone on with: drawn anew, and paused" seen "PAUSED"
press q q
expect "and left" is_given_back 0

begin 80 24
press "$program practise $bath --speed 300x" Enter
expect "it begins" seen "^Goal: Water only"
press Enter
expect "a lesson asks, and the clock stands" seen "Two gallons stand ready"
expect "at its moment" seen "9:05:18 .*PAUSED"

begin 80 24
practise --speed 60x
press Space n a C-u "water 2 gal over 20 s" Enter
expect "what may let go is said beside the room to the rim" seen "if it lets go now: OVER"
expect "an eruption is shown slowly" seen "0.5x *SLOW"
expect "over the rim" seen "OVER THE RIM"
expect "and no prediction" seen "NOT A PREDICTION"
expect "it stands when it is under the rim again" seen "PAUSED  NOT A PREDICTION"
press w
expect "water so soon after the boil is back is warned of" seen "The boil is just back: wait for a minute of it."
press Escape d
expect "what came of it" seen "Not passed: [0-9] of 4 terms hold"
press w
expect "a page of it" seen "debrief.html is written: open it in a browser"
expect "beside the same shift with care" grep -q '"title":"With care"' "$work/here/debrief.html"
press q q

begin 60 20
press "$program practise $bath" Enter
expect "too small: said" seen "needs 80 by 24, here 60 by 20"
mux resize-window -t t -x 80 -y 24
expect "and drawn when it fits" seen "^Goal: Water only"
press Enter w
expect "an act is typed" seen "what: water"
mux resize-window -t t -x 70 -y 24
expect "too small while it is typed" seen "needs 80 by 24, here 70 by 24"
mux resize-window -t t -x 200 -y 50
expect "and goes on at the top left of a large one" seen "what: water 2 gal over 4 min_"
expect "which is plain" is_plain
press Escape q q
sleep 0.3

begin 80 24
practise
head -c 10240 /dev/urandom | od -An -tx1 | tr -d ' ' >"$work/long"
mux load-buffer -b long "$work/long"
mux paste-buffer -p -b long -t t
expect "what is pasted is no keys" seen "What was pasted was not taken"
press a
mux paste-buffer -p -b long -t t
sleep 0.5
press Escape q q
expect "nor too long a line" is_given_back 0

begin 80 24
press "TERM=dumb $program practise $bath </dev/null | head -1; echo over" Enter
expect "a pipe gets lines" seen "^Two gallons, and a load"
press "TERM=dumb $program practise $bath" Enter
expect "a dumb terminal gets lines" seen "0:00 > *$"
press "wait 1 min" Enter
expect "and goes on by them" seen "^0:01 boils"
press "quit" Enter
press "clear; unset TERM; $program practise $bath --lines" Enter
expect "lines are asked for" seen "0:00 > *$"
press "quit" Enter

begin 80 24
press "clear; $program explore $PWD/tests/cli/baths/uncertain.bath --samples 48 >rows; $program explore $PWD/tests/cli/baths/uncertain.bath --samples 9999 >rows" Enter
expect "a study shows how far it is" seen "^ \[##* *\] [0-9]* of [0-9]* runs, .* left"
expect "and that it is through" seen "^ \[########################################\]"
sleep 1
press C-c
expect "broken off it hands out what there is" seen "ready *$"
# Each job twice: some seconds of search, where the lists that are shipped take less than one.
cp scenarios/plan/short-morning.bath "$work/here"
awk 'NR > 1 { again = $0; sub(/^[a-z]+/, "& again", again); print again } { print }' scenarios/plan/short-morning.csv \
    >"$work/here/short-morning.csv"
press "clear; $program plan short-morning.bath >sheet" Enter
expect "a plan shows what was found so far" seen "s  last out .* tried"
press C-c
expect "broken off likewise" seen "ready *$"
press "clear; $program size $PWD/tests/cli/baths/coil.bath --table >answer" Enter
expect "a search says how long it has taken" seen "searching, *[1-9][0-9]* s"
expect "until it is over" seen_no searching

begin 80 24
press "TERM=vt100 NO_COLOR=1 $program practise $bath" Enter
expect "another kind of terminal" seen "^Goal: Water only"
press Enter
expect "the same picture" seen "rim =|"
used() { awk '{ print $14 + $15 }' "/proc/$1/stat"; }
running=$(process)
before=$(used "$running")
sleep 10
after=$(used "$running")
expect "under a tenth of a core at 20 times: $((after - before)) of $(($(getconf CLK_TCK) * 10)) ticks" [ $((after - before)) -lt "$(getconf CLK_TCK)" ]
press q q
finish
