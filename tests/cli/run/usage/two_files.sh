boilback run calm.bath night.bath
