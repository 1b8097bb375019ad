cp "$BOILBACK_DATA"/scenarios/water-while-*.bath .
boilback lesson water-while-quiet.bath water-while-boiling.bath
