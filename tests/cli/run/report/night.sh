boilback run night.bath --units=si --full
