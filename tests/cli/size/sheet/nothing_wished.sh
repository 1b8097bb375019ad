boilback size trough.bath --sheet --units si
