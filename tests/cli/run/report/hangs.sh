boilback run --full hangs.bath
