boilback run dry.bath --full
