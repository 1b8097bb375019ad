boilback charge calm.bath
