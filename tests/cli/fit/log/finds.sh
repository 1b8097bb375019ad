# A log made by the model itself, with another efficiency: fitted, that comes back.
sed 's/efficiency = 60 %/efficiency = 64 %/; s/duration = 2 h/duration = 1 h/' calm.bath | sed '/from 0:35/d; s/1:35/0:35/; s/1:45/0:45/' >real.bath
boilback run real.bath --csv log.csv --step '2 min' >/dev/null
sed 's/efficiency = 64 %/efficiency = 60 %/' real.bath >guess.bath
printf '\n[uncertain]\nheat efficiency = 50 %% to 75 %%\nmixing time factor = 0.5 | 1\n' >>guess.bath
boilback fit guess.bath log.csv | sed -E 's/, [0-9]+ runs/, some runs/; s/[0-9.]+e-[0-9]+/tiny/g' | sed -n '1,13p'
