boilback run calm.bath --tolerance 0.5
