boilback charge calm.bath --from '35 in' --from-temperature '150 degF'
