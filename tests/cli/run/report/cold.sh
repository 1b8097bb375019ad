boilback run cold.bath --full
