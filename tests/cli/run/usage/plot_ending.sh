boilback run calm.bath --plot out.jpeg
