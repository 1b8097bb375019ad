boilback correct calm.bath --reads '291 degF' --boiling-level '36.5 in'
