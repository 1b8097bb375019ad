boilback run calm.bath --step 10
