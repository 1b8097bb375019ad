boilback correct trough.bath --reads '250 degF' --level '6 in'
