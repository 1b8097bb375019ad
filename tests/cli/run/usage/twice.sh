boilback run calm.bath --units us --units=si
