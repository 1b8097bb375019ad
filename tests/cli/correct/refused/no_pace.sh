boilback correct calm.bath --reads '285 degF' --level '6 in'
