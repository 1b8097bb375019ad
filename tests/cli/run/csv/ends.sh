# The last row is of the end, also where the interval does not divide the time: as the summary has it.
boilback run calm.bath --csv out.csv --step "37 min" --json | sed -n 's/.*"temperature_end_K": \([0-9.]*\).*/temperature \1/p'
cut -d, -f1,3 out.csv | sed 's/\(\.[0-9][0-9][0-9]\)[0-9]*/\1/'
