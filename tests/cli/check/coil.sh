boilback check coil.bath
