boilback run waits.bath --full | sed "/^What the model is/,\$d"
