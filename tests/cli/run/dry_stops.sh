boilback run dry.bath
