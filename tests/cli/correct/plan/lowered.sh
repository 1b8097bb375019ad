boilback correct trough.bath --reads '275 degF' --level '5 in' | head -7
