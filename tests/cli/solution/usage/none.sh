boilback solution --salts "100 % NaOH"
