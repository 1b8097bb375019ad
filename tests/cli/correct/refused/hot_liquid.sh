boilback correct calm.bath --reads 280degF --level 17in --liquid-strength '80 %'
