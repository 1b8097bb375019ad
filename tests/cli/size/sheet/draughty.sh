for draught in 0.25 0.26; do
    { cat trough.bath; printf '[room]\ndraught = %s m/s\n[exhaust]\nhood = lateral one side\n' $draught; } >draughty.bath
    boilback size draughty.bath --sheet | sed -n '/^HEAT/,/^$/p; /^EXHAUST/,/^$/p'
done
