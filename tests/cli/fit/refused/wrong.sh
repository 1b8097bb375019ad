printf '\n[uncertain]\nheat efficiency = 50 %% to 75 %%\n' | cat calm.bath - >u.bath
try() { echo "-- $1" >&2; shift; "$@"; echo "exit $?" >&2; }
log() { printf "$1" >log.csv; }
log 'time,temperature degF\n6:00,285\n'
try "nothing to fit" boilback fit calm.bath log.csv
try "too few" boilback fit u.bath log.csv
try "one file" boilback fit u.bath
try "both from standard input" boilback fit - -
try "no such log" boilback fit u.bath gone.csv
try "a weight that is none" boilback fit u.bath log.csv --thermometer '0 K'
log ''
try "empty" boilback fit u.bath log.csv
log '6:00,285\n6:10,286\n'
try "no header" boilback fit u.bath log.csv
log 'time,temperature\n6:00,285\n'
try "no unit" boilback fit u.bath log.csv
log 'time,temperature in\n6:00,285\n'
try "another unit" boilback fit u.bath log.csv
log 'time,temperature degF,temperature degC\n6:00,285,140\n'
try "twice" boilback fit u.bath log.csv
log 'time,temperature degF\n6:00,285\n6:10,hot\n25:00,285\n6:20,2850\n,285\n6:30,285 F\n'
try "rows" boilback fit u.bath log.csv
log 'time_s,temperature_K\n0,413\n600,414\n300,413\n'
try "back in time" boilback fit u.bath log.csv
printf '\n[uncertain]\nmixing time factor = 0.5 | 1\n' | cat calm.bath - >list.bath
log 'time,temperature degF\n6:00,285\n6:10,285\n6:20,285\n'
try "a list" boilback fit list.bath log.csv
