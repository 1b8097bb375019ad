boilback correct calm.bath --reads '285 degF' --level '26 in' | sed -n '1p; /^Steps/,/^$/p'
