boilback compare calm.bath night.bath --units si
