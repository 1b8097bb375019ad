# Two days and more by a few lines; the last one comes too late.
boilback practise waits.bath --script - <<'END' | head -19
help
END
sed 's/^duration.*/duration = 63 h/' gallons.bath >long.bath
boilback practise long.bath --script - <<'END'
0:10 heat 0 %
0:30 lid on
62:00 lid off
heat 100 %
63:00 heat 0 %
+1 s heat 50 %
quit
END
