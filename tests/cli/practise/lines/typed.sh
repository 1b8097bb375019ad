# Who types at a terminal is shown the clock and a sign to go on; what comes from a pipe is not asked for.
script -qec true /dev/null >/dev/null 2>&1 || exit 77
echo '0:05 heat 0 %' | script -qec 'boilback practise gallons.bath >typed.txt' /dev/null >/dev/null
echo '0:05 heat 0 %' | boilback practise gallons.bath >piped.txt
diff piped.txt typed.txt
