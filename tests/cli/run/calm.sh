boilback run calm.bath
