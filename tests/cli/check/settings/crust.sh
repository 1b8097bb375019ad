boilback check crust.bath
