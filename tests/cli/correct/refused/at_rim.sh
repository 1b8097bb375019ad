boilback correct calm.bath --reads '288 degF' --level '40 in'
