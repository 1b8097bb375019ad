boilback compare calm.bath
boilback compare calm.bath night.bath cold.bath
boilback compare - -
boilback compare calm.bath missing.bath
boilback compare calm.bath night.bath --plot pair.gif
boilback compare calm.bath night.bath --plot - --json
