boilback compare calm.bath brimful.bath --csv -
