boilback size brimful.bath
