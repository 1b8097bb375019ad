cp "$BOILBACK_DATA"/scenarios/water-while-*.bath .
boilback compare --json water-while-quiet.bath water-while-boiling.bath | sed -E 's/(\.[0-9]{2})[0-9]+/\1/; s/(e-?[0-9]+)//' | grep -v version
