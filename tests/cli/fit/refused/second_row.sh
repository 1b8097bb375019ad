# Already the second row may not lie before the first.
printf '\n[uncertain]\nheat efficiency = 50 %% to 75 %%\n' | cat calm.bath - >u.bath
printf 'time_s,temperature_K\n600,414\n300,413\n' >log.csv
boilback fit u.bath log.csv
