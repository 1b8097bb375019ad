boilback run night.bath
