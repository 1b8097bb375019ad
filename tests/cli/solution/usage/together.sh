# What does not go together, and rows that are none.
ask() { boilback solution --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2' "$@"; }
ask --boiling-point '285 degF' --pressure '1 atm' --altitude '900 ft'
ask --table --from '40 %' --to '50 %'
ask --table --from '40 %' --to '50 %' --step '1 %' --salt-fraction '45 %'
ask --table --from '50 %' --to '40 %' --step '1 %'
ask --table --from '40 %' --to '50 %' --step '0.001 %'
ask --table --from '40 %' --to '270 degF' --step '1 %'
ask --table --from '40 % or so' --to '50 %' --step '1 %'
ask --table --from '40 %' --to '50 %' --step '1 lot'
ask --boiling-point '285 degF' --plot out.svg
