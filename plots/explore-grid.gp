# explore-grid.gp -- a study in steps over one number: chances, slowest recovery and least freeboard against it.
#
# The program starts it in a folder that holds frame.tsv and cells.tsv. Texts are data: they are read into variables and
# shown without markup, never carried out.

terminal_form = ARG1 eq "dumb"
device = ARG1
output = ARG2
common = ARG0[1:strlen(ARG0) - strlen("explore-grid.gp")] . "common.gp"
part = "words"
load common

# What the files say ---------------------------------------------------------------------------------------------------

title = ""; program = ""; said = ""; axis = ""; L_unit = ""; limit_text = ""
loads = 0; limit = NaN; freeboard = NaN

stats "frame.tsv" using ( \
    is("said") ? (said = text(4), 0) : \
    is("loads") ? (loads = $2, 0) : \
    is("limit") ? (limit = $2, limit_text = text(4), 0) : \
    is("freeboard") ? (freeboard = $2, L_unit = text(4), 0) : \
    is("axis") ? (axis = text(4), 0) : \
    is("title") ? (title = text(4), 0) : \
    is("program") ? (program = text(4), 0) : 0) nooutput
from = NaN; to = NaN; slow = 0.0; least = NaN; most = NaN
smaller(x, y) = y < x || !(x == x) ? y : x
larger(x, y) = y > x || !(x == x) ? y : x
stats "cells.tsv" using ( \
    from = smaller(from, $1), to = larger(to, $1), \
    slow = $9 < 1e9 ? larger(slow, $9) : slow, slow = $10 < 1e9 ? larger(slow, $10) : slow, \
    least = smaller(least, $11), most = larger(most, $13), 0) nooutput
never = 0
stats "cells.tsv" using ($10 > slow ? (never = 1) : 0) nooutput

# Slower than four times the limit is slow, however slow.
slow = slow > 4 * limit ? 4 * limit : slow < 1.2 * limit ? 1.2 * limit : 1.05 * slow
least = smaller(least, freeboard); most = larger(most, freeboard)
if (!(most > least)) { least = least - 1; most = most + 1 }
unit = slow > 5400 ? 3600.0 : slow > 600 ? 60.0 : 1.0
unit_name = unit > 60 ? "h" : unit > 1 ? "min" : "s"

# Paper: everything is measured in lines of text ------------------------------------------------------------------------

head = terminal_form ? 2.0 : 2.2
body = terminal_form ? 8 : 9
title_lines = terminal_form ? 2 : 3.2
axis_lines = terminal_form ? 3 : 2.8
foot_lines = terminal_form ? 1 : 1.5
panels = loads > 0 ? 3 : 2
total = title_lines + panels * (head + body) + axis_lines + foot_lines

spare = 1
edge = 0
part = "paper"
load common

# The page --------------------------------------------------------------------------------------------------------------

part = "page"
load common
set label 1 title at screen 0.5, at(terminal_form ? 0.5 : 0.9) center noenhanced font big
set label 2 said at screen 0.5, at(terminal_form ? 1.5 : 2.4) center noenhanced
set label 3 program . warning at screen name_x, at(total - 0.7) left noenhanced
set label 4 axis at screen right, at(total - foot_lines - (terminal_form ? 0.5 : 0.8)) right noenhanced
plot NaN notitle
unset label

# The panels, one axis for all -----------------------------------------------------------------------------------------

# Colours of Okabe and Ito (2008), told apart without colour by their lines and points.
set style line 1 lc rgb "#009e73" lw 2 dt solid pt 7 ps 0.8
set style line 2 lc rgb "#d55e00" lw 2 dt (8, 4) pt 5 ps 0.8
set style line 3 lc rgb "#0072b2" lw 2 dt solid pt 7 ps 0.7
set style line 4 lc rgb "#000000" lw 1.2 dt (8, 4)
band_colour = "#bfd9ea"

margin = 0.03 * (to - from)
set border 3 lc rgb "#444444"
set xrange [from - margin : to + margin]
set xtics nice(to - from, terminal_form ? 5 : 8) nomirror scale 0.5 format ""
set ytics nomirror scale 0.5
if (!terminal_form) { set grid xtics ytics lt 1 lc rgb "#cccccc" lw 0.5 }
if (!terminal_form) { set key horizontal right bottom at graph 1, 1 noenhanced samplen 2.5 }

line = title_lines
set tmargin at screen at(line + head)
set bmargin at screen at(line + head + body)
set yrange [-2:102]
set ytics 0, terminal_form ? 50 : 20
if (terminal_form) {
    set label 1 "Chance, %  (o all loads back within " . limit_text . ", ! WARNING or graver)" at screen name_x, at(line + head / 2 + 0.1) left noenhanced
    plot "cells.tsv" using 1:(loads > 0 ? 100 * $2 : NaN) with points pt "o" notitle, \
        "cells.tsv" using 1:(100 * $5) with points pt "!" notitle
} else {
    set label 1 "Chance, %; bars: 95 %" at screen name_x, at(line + head / 2 + 0.1) left noenhanced
    plot "cells.tsv" using 1:(loads > 0 ? 100 * $2 : NaN) with lines ls 1 notitle, \
        "cells.tsv" using 1:(100 * $5) with lines ls 2 notitle, \
        "cells.tsv" using ($1 - 0.1 * margin):(loads > 0 ? 100 * $2 : NaN):(100 * $3):(100 * $4) with yerrorbars ls 1 lw 1.2 title (loads > 0 ? "all loads back within " . limit_text : ""), \
        "cells.tsv" using ($1 + 0.1 * margin):(100 * $5):(100 * $6):(100 * $7) with yerrorbars ls 2 lw 1.2 dt solid title "WARNING or graver"
}
line = line + head + body

if (loads > 0) {
    set tmargin at screen at(line + head)
    set bmargin at screen at(line + head + body)
    set yrange [0 : slow / unit]
    set ytics nice(slow / unit, terminal_form ? 3 : 5)
    Y(s) = (s > slow ? slow : s) / unit
    above = never ? "; at the top: slower, or never" : ""
    if (terminal_form) {
        set label 1 "Slowest recovery, " . unit_name . "  (* median, - 5 and 95 %, . limit" . above . ")" at screen name_x, at(line + head / 2 + 0.1) left noenhanced
        set samples 34
        plot '+' using 1:(limit / unit) with points pt "." notitle, \
            "cells.tsv" using 1:(Y($8)) with points pt "-" notitle, "cells.tsv" using 1:(Y($10)) with points pt "-" notitle, \
            "cells.tsv" using 1:(Y($9)) with points pt "*" notitle
    } else {
        set label 1 "Slowest recovery, " . unit_name . above at screen name_x, at(line + head / 2 + 0.1) left noenhanced
        plot "cells.tsv" using 1:(Y($8)):(Y($10)) with filledcurves fs solid 1 noborder fc rgb band_colour title "5 to 95 % of draws", \
            "cells.tsv" using 1:(Y($9)) with linespoints ls 3 title "median", \
            limit / unit with lines ls 4 title "limit"
    }
    line = line + head + body
}

set tmargin at screen at(line + head)
set bmargin at screen at(line + head + body)
room = 0.06 * (most - least)
set yrange [least - room : most + room]
set ytics nice(most - least, terminal_form ? 3 : 5)
set xtics format "%g"
if (terminal_form) {
    set label 1 "Least freeboard, " . L_unit . "  (* median, - 5 and 95 %, . limit)" at screen name_x, at(line + head / 2 + 0.1) left noenhanced
    plot '+' using 1:(freeboard) with points pt "." notitle, \
        "cells.tsv" using 1:11 with points pt "-" notitle, "cells.tsv" using 1:13 with points pt "-" notitle, \
        "cells.tsv" using 1:12 with points pt "*" notitle
} else {
    set label 1 "Least freeboard, " . L_unit at screen name_x, at(line + head / 2 + 0.1) left noenhanced
    plot "cells.tsv" using 1:11:13 with filledcurves fs solid 1 noborder fc rgb band_colour title "5 to 95 % of draws", \
        "cells.tsv" using 1:12 with linespoints ls 3 title "median", \
        freeboard with lines ls 4 title "limit"
}
unset multiplot
set output
