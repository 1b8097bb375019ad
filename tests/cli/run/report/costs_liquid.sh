# Seventeen gallons of ready-mixed liquid at 4.00 a gallon are 68.00; what is poured as water is no liquid.
{ cat "$BOILBACK_DATA/scenarios/liquid-makeup.bath" && printf '0:50 water 1 gal over 4 min\n[prices]\nliquid = 4 per gal\nwater = 1 per gal\ncurrency = USD\n'; } >paid.bath
boilback run paid.bath --json 2>/dev/null | grep -A 10 '"costs"'
boilback run paid.bath --full 2>/dev/null | grep " cost "
