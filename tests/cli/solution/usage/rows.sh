boilback solution --salts '100 % NaOH' --salt-fraction '50 %' --step '5 %'
