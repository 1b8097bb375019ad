boilback solution --salts '100 % NaOH' --table --from '40 %' --to '50 %' --step '5 degF'
