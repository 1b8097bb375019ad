boilback run cold.bath
