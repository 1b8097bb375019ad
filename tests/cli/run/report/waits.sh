boilback run waits.bath
