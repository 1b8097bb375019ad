boilback solution --salts '100 % NaOH' --salt-fraction '60 %' --temperature '40 degC'
