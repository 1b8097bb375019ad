boilback check hangs.bath
