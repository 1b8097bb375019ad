boilback run calm.bath --json --csv -
