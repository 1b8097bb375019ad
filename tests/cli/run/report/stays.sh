boilback run --full stays.bath
