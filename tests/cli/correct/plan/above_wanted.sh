boilback correct calm.bath --reads '289 degF' --level '28 in'
