boilback correct calm.bath --reads '430 degF' --level '25 in'
