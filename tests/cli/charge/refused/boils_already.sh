boilback charge calm.bath --from '26 in' --from-temperature '285 degF'
