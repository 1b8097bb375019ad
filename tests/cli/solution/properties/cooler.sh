boilback solution --salts "100 % NaOH" --salt-fraction "50 %" --temperature "25 degC" --elevation-factor 0.95
