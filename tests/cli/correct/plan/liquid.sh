boilback correct calm.bath --reads '284 degF' --level '24 in' --liquid-strength '60 %'
