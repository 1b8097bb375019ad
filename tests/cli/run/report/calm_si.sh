boilback run calm.bath --units si
