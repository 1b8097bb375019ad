boilback correct calm.bath --reads '288 degF' --level '20 in' --liquid-strength '20 %'
