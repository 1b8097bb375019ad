boilback solution --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2' --table --from '270 degF' --to '290 degF' --step '5 degF' --altitude '900 ft'
