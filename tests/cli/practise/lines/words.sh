# What one may type is listed; lines may end as in any editor; what was planned stands among the acts without a time; of a long
# schedule that is left to somebody the first lines are shown.
boilback practise gallons.bath --script - >said <<'END'
help
quit
END
sed -n '/^ acts/,$p' said
printf 'every 4 min from 0:01 to 0:09 water 1 gal over 1 min\r\nacts\r\nwait 1 min\r\nquit\r\n' | boilback practise gallons.bath --script - | tail -4
boilback practise gallons.bath --script - <<'END' | sed -n '/0:00 /,$p'
wait until 0:02 please
wait 2 min please
when boiling for 1 min
0:01 wat
+1 min after the boil is back water 1 gal
every 4 min from 0:01 to 0:09 gallons
back
quit
END
{
    sed '/^every/d; /^duration/d; s/^\[schedule\].*//' calm.bath
    echo '[schedule]'
    for minute in 1 2 3 4 5 6 7 8 9 10 11; do printf '0:%02d water 1 gal over 20 s\n' $minute; done
} >eleven.bath
boilback practise eleven.bath --script /dev/null --speed 20 | sed -n '1,/^$/p' | head -20
