# The second line says what to do first: what the finding of the first line says itself. Causes stand by what they cause.
for bath in night shift dry brimful calm; do
    boilback run $bath.bath 2>/dev/null | sed -n 1,2p
    words=$(boilback run $bath.bath | sed -n 's/^ do first   *//p')
    boilback run $bath.bath --json | tr -d '\n' | grep -qF "$words" || echo "its own words are others"
done
boilback run "$BOILBACK_DATA/scenarios/too-heavy.bath" --full | grep -c 'Cause: '
