boilback correct calm.bath --reads '288 degF' --level '25 in' --boiling-level '26 in'
