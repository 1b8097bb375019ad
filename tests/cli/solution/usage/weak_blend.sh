boilback solution --salts "10 % NaOH, 90 % NaNO3" --boiling-point "285 degF"
