# close.awk -- awk -f close.awk EXPECTED GOT: ends with 0 when both texts are the same but for last digits: two numbers agree
# when they differ by no more than a millionth of the larger, or by one unit of the last place that is printed; everything
# between numbers must be the same, byte for byte. Names each line that does not agree.
function magnitude(x) { return x < 0 ? -x : x }

# One unit of the last place printed: 0.01 for 3.27, 1e-9 for 1.5e-08, 1 for 42.
function unit(text,  mantissa, exponent) {
    mantissa = text
    exponent = 0
    if (match(text, /[eE]/)) {
        mantissa = substr(text, 1, RSTART - 1)
        exponent = substr(text, RSTART + 1) + 0
    }
    return 10 ^ (exponent - (match(mantissa, /\./) ? length(mantissa) - RSTART : 0))
}

function agree(a, b,  larger, step) {
    larger = a > b ? a + 0 : b + 0
    step = unit(a) > unit(b) ? unit(a) : unit(b)
    return magnitude(a - b) <= 1e-6 * larger || magnitude(a - b) <= 1.000001 * step
}

# Cuts a line at its numbers: numbers[1..n] and the text around them, texts[0..n].
function cut(line, numbers, texts,  n) {
    n = 0
    while (match(line, /[0-9]+(\.[0-9]+)?([eE][-+]?[0-9]+)?/)) {
        texts[n++] = substr(line, 1, RSTART - 1)
        numbers[n] = substr(line, RSTART, RLENGTH)
        line = substr(line, RSTART + RLENGTH)
    }
    texts[n] = line
    return n
}

function same(a, b,  n, i) {
    n = cut(a, numbersA, textsA)
    if (cut(b, numbersB, textsB) != n || textsA[n] != textsB[n])
        return 0
    for (i = 1; i <= n; i++)
        if (textsA[i - 1] != textsB[i - 1] || !agree(numbersA[i], numbersB[i]))
            return 0
    return 1
}

FNR == NR { expected[NR] = $0; lines = NR; next }
!(FNR in expected) || !same(expected[FNR], $0) { print FILENAME ":" FNR ": " $0; bad = 1 }
{ got = FNR }
END { exit bad || got + 0 != lines + 0 }
