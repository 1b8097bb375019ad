boilback correct shift.bath --reads '280 degF' --level '21 in' --csv -
