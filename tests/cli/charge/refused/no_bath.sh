boilback charge calm.bath --from '10 in' --from-strength '89 %' --from-temperature '200 degC'
