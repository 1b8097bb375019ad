boilback run hangs.bath
