# The log of another bath.
sed 's/duration = 2 h/duration = 1 h/; /^every/d' calm.bath >still.bath
printf '\n[uncertain]\nheat efficiency = 50 %% to 75 %%\n' >>still.bath
printf 'time,temperature degF\n6:00,240\n6:20,241\n6:40,242\n' >log.csv
boilback fit still.bath log.csv | grep -A 2 'further from the log'
