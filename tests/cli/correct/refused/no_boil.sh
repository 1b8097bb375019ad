sed 's/^input .*/input = 5 kBtu\/h/' calm.bath | boilback correct - --reads '288 degF' --level '25 in'
