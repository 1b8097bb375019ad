# One alone, in SI; dry salt on the floor.
cp "$BOILBACK_DATA"/scenarios/salt-slug.bath .
boilback lesson salt-slug.bath --units si
