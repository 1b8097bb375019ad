# Readings of both kinds, counted together, and rows that lie outside.
printf '\n[uncertain]\nheat efficiency = 50 %% to 75 %%\nroom temperature = 55 degF to 95 degF\n' | cat calm.bath - >u.bath
printf 'losses evaporation factor = 0.7 to 1.3\nbath boiling point = 284 degF to 286 degF\n' >>u.bath
printf 'time_s,temperature_K,still_level_m\n0,413,0.5\n600,414,\n999999,414,0.5\n' >log.csv
boilback fit u.bath log.csv
