boilback run calm.bath --units si | head -24
