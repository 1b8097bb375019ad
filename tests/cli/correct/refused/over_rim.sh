boilback correct calm.bath --reads '288 degF' --level '41 in'
