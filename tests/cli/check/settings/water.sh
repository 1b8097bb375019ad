boilback check water.bath
