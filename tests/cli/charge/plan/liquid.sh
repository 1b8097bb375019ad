boilback charge calm.bath --liquid-strength '60 %' --units si
