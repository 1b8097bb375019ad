# What is no mistake is remarked upon, and the exit is that of a good scenario.
boilback check thermostat.bath | head -5
boilback check thermostat.bath --json | grep -A 4 remarks
boilback check thermostat.bath | sed -n '/\[heat\]/,/^$/p'
