boilback run calm.bath --full
