boilback correct trough.bath --reads '335 degF' --level '15 in'
