# More water than the tank holds: the run ends at the rim, and what was found until then stands.
{ echo 'duration = 2 h'; cat trough.bath; printf '\n[schedule]\n0:10 water 500 gal over 20 min\n'; } | boilback run -
