boilback run calm.bath --step 0.01s
