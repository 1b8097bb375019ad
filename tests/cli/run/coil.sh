boilback run coil.bath
