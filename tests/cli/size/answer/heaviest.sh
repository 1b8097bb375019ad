boilback size calm.bath --heaviest
