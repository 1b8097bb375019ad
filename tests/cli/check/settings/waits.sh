boilback check waits.bath
