boilback solution --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2' --table --from '270 degF' --to '290 degF' --step '10 degF'
boilback solution --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2' --table --from '5 lb/gal' --to '6 lb/gal' --step '0.5 lb/gal' --altitude '5000 ft'
