# common.gp -- what all pictures share. A script loads it three times, as it goes on: `part` says what for.
#
#     part "words"   how the files of the program are read; nothing else has been set
#     part "paper"   `total` lines of text are known, and `spare` more in the terminal: terminal, output, the height of a line
#     part "page"    the page itself, on which titles, foot and legend stand
#
# The script has set terminal_form, device (ARG1) and output (ARG2), and what is said at each part.

if (part eq "words") {
    set encoding utf8
    is(name) = strcol(1) eq name
    text(n) = strcol(n)[2:*]
    set datafile separator tab
    set datafile commentschars ""

    # Axes: three to six ticks.
    ticks(x) = x > 5 ? 10 : x > 2 ? 5 : x > 1 ? 2 : 1
    nice_in(x, decade) = decade * ticks(x / decade)
    nice(range, count) = nice_in(range / count, 10.0 ** floor(log10(range / count)))
}

# Everything is measured in lines of text. at(): screen height of a line, counted from the top; where `edge` is more than 0,
# the first row of the terminal is 1 and the last 0, and a little more, for edges of panels are rounded down.
if (part eq "paper") {
    if (terminal_form) {
        total = ceil(total) + spare
        set terminal dumb noenhanced mono size 80, total
    }
    if (device eq "svg") { set terminal svg noenhanced size 900, 18 * total font "sans-serif,12" background "#ffffff" dynamic }
    if (device eq "png") { set terminal pngcairo noenhanced size 1350, 27 * total font "sans,9" fontscale 1.5 background "#ffffff" linewidth 1.5 pointscale 1.5 }
    if (device eq "pdf") { set terminal pdfcairo noenhanced size 7.5, 0.15 * total font "sans,5.4" fontscale 1 background "#ffffff" linewidth 1.2 pointscale 0.8 }
    set output output
    at(line) = terminal_form && edge > 0 ? 1 - (line - edge) / (total - 1.0) : 1 - line / total
    left = terminal_form ? 9.0 / 80 : 0.085
    right = terminal_form ? 76.0 / 80 : 0.965
    name_x = 0.008
    big = terminal_form ? "" : device eq "svg" ? ",17" : device eq "png" ? ",12.5" : ",7.5"
    warning = ". A prediction is never a permission."
}

if (part eq "page") {
    set multiplot
    set lmargin at screen left
    set rmargin at screen right
    set tmargin at screen 0.999
    set bmargin at screen 0.001
    unset border
    unset tics
    unset key
    set xrange [0:1]
    set yrange [0:1]
}
