boilback correct water.bath --reads '212 degF' --level '12 in'
