boilback size trough.bath --sheet --interval
