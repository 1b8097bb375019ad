boilback correct calm.bath --reads '288 degF +- 1 degF' --level '25 in'
