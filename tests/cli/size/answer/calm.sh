boilback size calm.bath --units si
