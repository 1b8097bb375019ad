boilback solution --salts "100 % NaOH" --strength "6 lb/gal" --boiling-point "285 degF"
