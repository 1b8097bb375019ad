boilback charge water.bath --liquid
boilback charge water.bath --from '5 in' --from-strength '45 %'
boilback charge water.bath --salts-first
