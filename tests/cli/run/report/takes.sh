boilback run --full takes.bath
