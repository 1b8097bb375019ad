# Residuals are model less measured: with a log of the model itself they are nothing.
boilback run calm.bath --csv log.csv --step '20 min' >/dev/null
printf '[uncertain]\nheat efficiency = 50 %% to 80 %%\n' | cat calm.bath - >u.bath
boilback fit u.bath log.csv --csv - | awk -F, 'NR == 1 { print } NR > 1 { n[$2]++; r = $5 - $3 - $6; if (r * r > 1e-12) print "line " NR } END { for (k in n) print k, n[k] }' | sort
