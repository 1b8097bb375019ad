# A log by the clock, over midnight, in the units of its header; quotes, blanks, comments and other columns do no harm.
sed 's/^start .*/start = 23:30/; s/duration = 2 h/duration = 1 h/; /^every/d' calm.bath >still.bath
printf '\n[uncertain]\nheat efficiency = 50 %% to 75 %%\n' >>still.bath
cat >log.csv <<'END'
# read by hand
Time, operator ,"Temperature degF",still level cm
23:20,ab,284.9,66.1
23:30,ab,285.0,66.0
"23:45",cd,285.9,65.6

0:00,cd,286.8,
0:15:30,cd,287.9,64.6
0:40,cd,289.5,64.0
END
boilback fit still.bath log.csv --units si | sed -E 's/, [0-9]+ runs/, some runs/'
END_STATUS=$?
boilback fit still.bath log.csv --thermometer '2 degF' --dipstick '1/8 in' --json | grep -E 'temperatures|levels|left_out|converged|"name"|at_bound'
exit $END_STATUS
