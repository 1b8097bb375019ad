# The lessons that are shipped, wherever the program stands.
boilback practise --lessons | sed '1s/in .*scenarios/in HERE/' | head -5
BOILBACK_DATA=/nowhere boilback practise --lessons
