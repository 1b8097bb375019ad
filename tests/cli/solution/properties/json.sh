boilback solution --salts "65 % NaOH, 35 % NaNO3" --strength "800 g/L" --pressure "90 kPa" --json | sed "s/\([1-9][0-9.]\{5\}\)[0-9.]*/\1/"
