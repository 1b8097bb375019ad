boilback run calm.bath --units metric
