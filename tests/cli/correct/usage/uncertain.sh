for reads in '286 degF +- 2' '286 degF +- 60 degF' '286 degF +- 1 degF or so' '60 degC' '286 degF ± 1 degF'; do
    boilback correct calm.bath --reads "$reads" --level '26 in' | sed -n 1p
done
