boilback run --full waits.bath --full | sed "/^What the model is/,\$d"
