command -v gnuplot >/dev/null || exit 77
table() { # option...
    boilback solution --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2' --table --from '40 %' --to '60 %' --step '4 %' "$@"
}
table --plot out.svg >/dev/null && [ "$(head -c 5 out.svg)" = '<?xml' ] || echo "no svg"
table --plot out.pdf --units si >/dev/null && [ "$(head -c 5 out.pdf)" = '%PDF-' ] || echo "no pdf"
table --plot - >terminal
grep -q 'crystallises below' terminal || echo "nothing in the terminal"
awk 'length > 80' terminal
table --plot - --json 2>&1
boilback solution --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2' --strength '6 lb/gal' --plot out.svg 2>&1
