boilback correct calm.bath --reads '281 degF' --level '26 in' --units si
