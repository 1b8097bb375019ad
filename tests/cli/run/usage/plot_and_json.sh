boilback run calm.bath --plot - --json
