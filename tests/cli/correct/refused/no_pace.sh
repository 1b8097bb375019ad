boilback correct trough.bath --reads '245 degF' --level '5 in'
