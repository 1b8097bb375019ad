# order.awk -- of lines FILE LINE COLUMN LENGTH TEXT, a tab, and the line of the file: a number each, by which they are sorted, and the
# first part once more. It comes of the seed and of the texts alone, not of LINE: squares modulo a prime below the root of 2^53.
BEGIN {
    FS = "\t"
    prime = 94906249
    for (i = 1; i < 256; i++) code[sprintf("%c", i)] = i
}
{
    at = $1
    sub(/ [0-9]+ /, " ", at)
    text = at " " $2
    h = 1
    for (i = 1; i <= length(text); i++) h = (h * 31 + code[substr(text, i, 1)]) % prime
    for (i = 1; i <= 4; i++) h = (h * h + 7919 * seed + i) % prime
    print h "\t" $1
}
