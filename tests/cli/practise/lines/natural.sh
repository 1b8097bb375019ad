# What people type for 'help' and for 'quit', behind which nothing more is told.
printf '?\nq\nstate\n' | boilback practise gallons.bath --script - | sed -n '3,$p'
printf 'exit now\nexit\nstate\n' | boilback practise gallons.bath --script - | sed -n '5,$p'
