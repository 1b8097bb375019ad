#!/bin/sh
# layering.sh -- each room of model/ includes only rooms of its own tier or of tiers above it, no room of src/, and nothing that
# reads, prints or keeps global state.
tiers='
boil grow search
water steel naoh
solution
room tank heater control
surface body stirred load pool layer solids drag saturation
schedule
plant
stabilised march bath look look_parts look_bath look_water modes
record run
findings pace filling charge correcting correct_bath correct_room correct_steps correct_proof correct size sample fit calm capacity
'
rank() {
    echo "$tiers" | awk -v room="$1" '{ for (i = 1; i <= NF; i++) if ($i == room) { print NR; exit } }'
}
status=0
for file in model/*.[ch]; do
    own=$(basename "$file" | sed 's/\.[ch]$//')
    mine=$(rank "$own")
    if [ -z "$mine" ]; then
        echo "$file: this room has no tier; give it one in tests/layering.sh" >&2
        status=1
        continue
    fi
    for other in $(sed -n 's/^#include "\(.*\)\.h".*/\1/p' "$file"); do
        theirs=$(rank "$other")
        if [ -z "$theirs" ] || [ "$theirs" -gt "$mine" ]; then
            echo "$file: includes $other.h, which is not in its tier or one above" >&2
            status=1
        fi
    done
    if grep -nE '#include <(stdio|locale|signal|unistd|fcntl|time)\.h>|printf|fopen|getenv|gsl_set_error_handler' "$file" >&2; then
        echo "$file: model/ neither reads, prints nor changes the process" >&2
        status=1
    fi
done
exit $status
