boilback run calm.bath --jsno
