boilback charge calm.bath --from-strength '40 %'
