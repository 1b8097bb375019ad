boilback solution --salts '100 % NaOH' --salt-fraction '0 %' --json
