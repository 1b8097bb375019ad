boilback run water.bath
