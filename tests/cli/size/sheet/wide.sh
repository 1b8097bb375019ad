{ sed 's/^width .*/width = 40 in/' trough.bath; printf '[exhaust]\nhood = lateral one side\n[design]\nwatt density = 30 W/in2\n'; } >wide.bath
boilback size wide.bath --sheet | sed -n '/^OTHER/,/^$/p; /^EXHAUST/,/^$/p'
