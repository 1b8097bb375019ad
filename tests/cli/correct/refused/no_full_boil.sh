boilback correct trough.bath --reads '240 degF' --level '20 in'
