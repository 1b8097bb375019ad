boilback charge calm.bath --liquid-strength '25 %'
