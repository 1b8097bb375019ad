boilback run shift.bath --full | sed "/^What the model is/,\$d"
