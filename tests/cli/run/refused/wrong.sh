boilback run wrong.bath
