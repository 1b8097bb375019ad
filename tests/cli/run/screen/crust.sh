boilback run crust.bath
boilback correct --reads 290degF --level 19in crust.bath
