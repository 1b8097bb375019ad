boilback compare calm.bath calm.bath | sed -n '/^ What differs/,/^$/p'
