boilback correct calm.bath --reads '288 degF give or take' --level '25 in'
