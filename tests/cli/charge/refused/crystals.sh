boilback charge calm.bath --from '10 in'
