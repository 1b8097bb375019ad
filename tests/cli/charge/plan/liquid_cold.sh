sed 's/^temperature = .*/temperature = 40 degF/' calm.bath | boilback charge - --liquid
