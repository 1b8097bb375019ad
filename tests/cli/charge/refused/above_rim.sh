boilback charge calm.bath --from '41 in'
boilback charge calm.bath --from-temperature '100 degF'
