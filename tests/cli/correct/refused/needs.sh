boilback correct calm.bath --level '20 in' --boiling-level '22 in' --reads '285 degF'
