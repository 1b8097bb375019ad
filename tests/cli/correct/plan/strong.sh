# Above its band it is doubted; too full as well, it is cooled and bailed out first. The mixer stays on.
{ cat calm.bath; printf '\n[fittings]\nmixer power = 300 W\nmixer = on\n'; } >strong.bath
boilback correct strong.bath --reads '297 degF ± 1 degF' --level '36 in'
