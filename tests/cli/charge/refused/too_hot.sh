boilback charge calm.bath --from '10 in' --from-strength '40 %' --from-temperature '220 degF'
