boilback solution --salts "80 % NaOH, 15 % NaNO3, 5 % NaNO2" --boiling-point "285 degF" --altitude "900 ft"
