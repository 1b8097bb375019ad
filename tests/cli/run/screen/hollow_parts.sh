boilback run "$BOILBACK_DATA/scenarios/hollow-parts.bath"
