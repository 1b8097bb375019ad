boilback solution --salts "100 % NaOH" --salt-fraction "85 %"
