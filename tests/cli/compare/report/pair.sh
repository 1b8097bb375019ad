cp "$BOILBACK_DATA"/scenarios/water-while-*.bath .
boilback compare water-while-quiet.bath water-while-boiling.bath
