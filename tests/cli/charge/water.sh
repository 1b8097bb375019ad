boilback charge water.bath
