# Temperatures and levels count alike: one of each are two readings, and too few for two numbers.
printf '\n[uncertain]\nheat efficiency = 50 %% to 75 %%\nlosses evaporation factor = 0.8 to 1.5\n' | cat calm.bath - >u.bath
printf 'time_s,temperature_K,still_level_m\n600,414,0.5\n' >log.csv
boilback fit u.bath log.csv
