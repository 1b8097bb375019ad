boilback size calm.bath --table --plot out.svg
boilback size calm.bath --interval --plot out.svg
boilback size calm.bath --json --plot -
boilback size calm.bath --plot out.gif
