boilback practise --help
boilback practise
boilback practise gallons.bath --scrpt x
