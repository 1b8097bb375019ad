boilback run --json waits.bath
