#!/bin/sh
# schema.sh STAGE -- what each command writes with --json is as its installed schema has it, the scenarios' and the odd cases'; and
# a schema that is broken for it, or a document that is, is noticed. STAGE is the tree to be installed (make stage). The last line
# is "N passed, N failed, N skipped".
here=$(cd "$(dirname "$0")" && pwd)
. "$here/expect.sh"
# A copy: other tests make the tree anew meanwhile.
cp -R "$1" "$work/stage" || exit 2
stage=$work/stage
program=$stage/bin/boilback
schemas=$stage/share/boilback/schema
scenarios=$stage/share/boilback/scenarios
blend='80 % NaOH, 15 % NaNO3, 5 % NaNO2'

python=yes
python3 -c 'import json' 2>/dev/null || python=no

is_valid() { # schema document
    python3 "$here/schema.py" "$schemas/$1.json" "$2"
}

is_refused() { # schema document
    ! python3 "$here/schema.py" "$1" "$2" >"$work/why" 2>&1 && grep -q '^\$' "$work/why"
}

valid() { # command argument...: with --json
    if [ $python = no ]; then
        skip "a schema of $1 (no python3)"
        return
    fi
    "$program" "$@" --json >"$work/$1.json"
    expect "$*" is_valid "$1" "$work/$1.json"
}

# The last document of the command with one thing in it changed.
bites() { # command what sed-script
    if [ $python = no ]; then
        skip "a schema of $1 (no python3)"
        return
    fi
    sed "$3" "$work/$1.json" >"$work/changed.json"
    expect "$1: changed: $2" [ "$(cmp "$work/$1.json" "$work/changed.json" 2>&1 | grep -c .)" -gt 0 ]
    expect "$1: is refused with $2" is_refused "$schemas/$1.json" "$work/changed.json"
}

for scenario in "$scenarios"/*.bath "$here"/cli/baths/brimful.bath; do
    valid check "$scenario"
    valid run "$scenario"
done
valid check "$scenarios"/lessons/01-*.bath
bites check "a term that neither holds nor does not" 's/"holds": true/"holds": "so so"/'
valid charge "$scenarios/liquid-makeup.bath" --liquid
valid charge "$scenarios/normal-shift.bath"
bites charge "a word that is none" 's/"kind": "water"/"kind": "milk"/'
valid run "$scenarios/too-heavy.bath"
bites run "a key that is not known" 's/"tolerance"/"exactness"/'
bites run "a number that is text" 's/"end_s": \(.*\),/"end_s": "\1",/'
bites run "a finding without its severity" '/"severity"/d'
bites check "a list that is none" 's/"values": \[\]/"values": 3/'
valid correct "$scenarios/normal-shift.bath" --reads '288 degF' --level '19 in'
valid correct "$scenarios/normal-shift.bath" --reads '280 degF +- 2 degF' --level '20 in' --liquid-strength '60 %'
bites correct "null where a plan must be" 's/"set_point_K": .*,/"set_point_K": {},/'
valid size "$scenarios/normal-shift.bath"
valid size "$scenarios/too-heavy.bath"
valid size "$scenarios/normal-shift.bath" --table
valid size "$here/cli/baths/trough.bath" --table --down 'tank level = 14 in to 22 in : 2' --across 'room draught = 0.1 m/s to 0.3 m/s : 2'
valid size "$scenarios/normal-shift.bath" --heaviest
valid size "$here/cli/baths/hooded.bath" --sheet
valid size "$scenarios/normal-shift.bath" --interval
bites size "the number of another document" 's/"interval_s"/"times"/'
valid plan "$scenarios/plan/five-jobs.bath"
cp "$scenarios"/plan/five-jobs.* "$work"
printf '[uncertain]\nheat efficiency = 55 %% to 65 %%\n' >>"$work/five-jobs.bath"
valid plan "$work/five-jobs.bath" --odds '50 %'
cat >>"$work/five-jobs.bath" <<'END'
[now]
clock = 7:01
reads = 287 degF
boils = yes
level = 19.6 in
in the tank = pins since 6:50
out = brackets, covers, shims
END
valid plan "$work/five-jobs.bath" --now
bites plan "a number for a reason" 's/"reason": .*,/"reason": 1,/'
valid compare "$scenarios/water-while-quiet.bath" "$scenarios/water-while-boiling.bath"
valid compare "$scenarios/too-heavy.bath" "$scenarios/weak-bath.bath"
bites compare "a side that is missing" '/^  "a": {/,/^  },/d'
valid lesson "$scenarios/water-while-quiet.bath"
valid lesson "$scenarios/water-while-quiet.bath" "$scenarios/water-while-boiling.bath"
bites lesson "an event without its words" 's/"words"/"sounds"/'
valid solution --salts "$blend" --boiling-point '285 degF'
valid solution --salts "$blend" --table --from '40 %' --to '60 %' --step '5 %'
bites solution "true for a number" 's/"salt_fraction": .*,/"salt_fraction": true,/'
valid explore "$scenarios/uncertain-shift.bath" --samples 16
bites explore "a percentile too many" 's/"p50"/"p49"/'
valid explore "$here/cli/baths/calm.bath" --grid 'heat input = 200 kBtu/h to 500 kBtu/h : 3'
valid fit "$scenarios/uncertain-shift.bath" "$scenarios/uncertain-shift-log.csv"
bites fit "a correlation that is text" 's/"correlation": \[/"correlation": ["much",/'

for command in $("$program" --help | sed -n '/^commands:/,/^$/s/^  \([a-z][a-z-]*\).*/\1/p'); do
    # What is worked line by line has no answer to be a document.
    if [ "$command" = practise ]; then
        expect "$command has no schema" [ ! -e "$schemas/$command.json" ]
        continue
    fi
    expect "$command has --json" sh -c '"$1" "$2" --help | grep -q "^  --json "' sh "$program" "$command"
    expect "$command has a schema" [ -s "$schemas/$command.json" ]
done

finish
