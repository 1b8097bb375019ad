for reads in '286 f' '286 deg' '286 degrees F' '286 Fahrenheit' '141 Celsius'; do
    boilback correct calm.bath --reads "$reads" --level '26 in'
done
