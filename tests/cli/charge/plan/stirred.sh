# A mixer that is stated, and more of it than a person with a paddle gives; in SI units.
printf '\n[fittings]\nmixer power = 300 W\n' | cat calm.bath - | sed 's/^input .*/input = 1900 kBtu\/h/' >stirred.bath
boilback charge stirred.bath --units si | sed -n '/heat on, full/,/^The bath/p'
