boilback solution --salts "80 % NaOH, 15 % NaN03, 5 % NaNO2" --boiling-point "285 degF"
