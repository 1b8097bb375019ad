# size.gp -- slowest recovery against heat to the tank, the limit, and the window between too little and too much.
#
# The program starts it in a folder that holds frame.tsv and points.tsv. Texts are data: they are read into variables and
# shown without markup, never carried out.

terminal_form = ARG1 eq "dumb"
device = ARG1
output = ARG2
common = ARG0[1:strlen(ARG0) - strlen("size.gp")] . "common.gp"
part = "words"
load common

# What the files say ---------------------------------------------------------------------------------------------------

title = ""; program = ""; said = ""; source = ""; efficiency = NaN
need = NaN; leaves = NaN; likely_from = NaN; likely = NaN; possible_from = NaN; possible = NaN; own = NaN; limit = NaN
need_text = ""; leaves_text = ""; likely_text = ""; possible_text = ""; own_text = ""; limit_text = ""

stats "frame.tsv" using ( \
    is("power") ? (P_factor = $2, P_unit = text(4), 0) : \
    is("range") ? (from = $2, to = $3, 0) : \
    is("input") ? (efficiency = $2, source = text(4), 0) : \
    is("need") ? (need = $2, need_text = text(4), 0) : \
    is("leaves") ? (leaves = $2, leaves_text = text(4), 0) : \
    is("likely") ? (likely_from = $2, likely = $3, likely_text = text(4), 0) : \
    is("possible") ? (possible_from = $2, possible = $3, possible_text = text(4), 0) : \
    is("own") ? (own = $2, own_text = text(4), 0) : \
    is("limit") ? (limit = $2, limit_text = text(4), 0) : \
    is("said") ? (said = text(4), 0) : \
    is("title") ? (title = text(4), 0) : \
    is("program") ? (program = text(4), 0) : 0) nooutput

P(x) = x * P_factor
known(x) = x == x
high = 3 * limit
low = P(from); end = P(to)
unit = limit > 5400 ? 3600.0 : limit > 150 ? 60.0 : 1.0
unit_name = unit > 60 ? "h" : unit > 1 ? "min" : "s"
Y(s) = s / unit
held(s) = s <= high ? Y(s) : Y(high)

# Where runs leave what is known of the bath, and above, nothing is claimed.
fine = 0; over = 0; above = 0; beyond = NaN
stats "points.tsv" using ( \
    fine = fine || ($3 == 0 && $2 <= high), over = over || $3 == 1, above = above || ($3 == 0 && !($2 <= high)), \
    beyond = $3 == 2 && !(beyond <= $1) ? $1 : beyond, 0) nooutput
from_both = known(likely_from) && known(possible_from) ? (likely_from > possible_from ? likely_from : possible_from) : NaN
in_likely = known(likely) ? likely : known(beyond) ? beyond : to
in_both = known(possible) && possible < in_likely ? possible : in_likely
in_both = known(leaves) && leaves < in_both ? leaves : in_both
open_likely = known(likely_from) && in_likely > likely_from
open_both = known(from_both) && in_both > from_both

narrower = open_likely && !(open_both && in_both == in_likely && from_both == likely_from)
rows = (narrower && !terminal_form) + fine + over + above + 1 + (need_text ne "") + (leaves_text ne "") + (likely_text ne "") + (possible_text ne "") + 1.3 * (likely_text ne "") + (own_text ne "") \
    + (open_both && !terminal_form) + (known(beyond) ? 1 : 0)

# Paper: everything is measured in lines of text ------------------------------------------------------------------------

body = terminal_form ? 15 : 17
head = terminal_form ? 2.0 : 1.7
title_lines = terminal_form ? 2 : 3.2
top_axis_lines = source eq "" || terminal_form ? 0 : 2.2
axis_lines = terminal_form ? 3 : 2.8
per_row = terminal_form ? 1 : 1.15
foot_lines = 1.5
total = title_lines + head + top_axis_lines + body + axis_lines + per_row * rows + foot_lines

spare = 0
edge = 0
part = "paper"
load common

# Colours of Okabe and Ito (2008), told apart without colour by their lines and points.
DOT = terminal_form ? "" : "point pt 7 ps 0.7 lc rgb '#0072b2'"
TRIANGLE = terminal_form ? "" : "point pt 8 ps 0.8 lc rgb '#0072b2'"
CROSS = terminal_form ? "" : "point pt 2 ps 1 lw 1.5 lc rgb '#d55e00'"
SQUARE = terminal_form ? "" : "point pt 4 ps 0.8 lc rgb '#000000'"
set style line 1 lc rgb "#000000" lw 1.5 dt (8, 4)
set style line 2 lc rgb "#009e73" lw 2.5 dt solid
set style line 3 lc rgb "#d55e00" lw 2 dt solid
set style line 4 lc rgb "#e69f00" lw 2 dt (4, 3)
set style line 5 lc rgb "#000000" lw 1 dt (2, 3)
set style line 6 lc rgb "#cc79a7" lw 2 dt (8, 3, 2, 3)
array area_colour[2] = [0xcfe6d8, 0xe8e8e8]

# The page --------------------------------------------------------------------------------------------------------------

part = "page"
load common
set label 1 title at screen 0.5, at(terminal_form ? 0.5 : 0.9) center noenhanced font big
set label 2 said at screen 0.5, at(terminal_form ? 1.5 : 2.4) center noenhanced
if (likely_text ne "") {
    set label 7 "Likely: with the likely laws of mixing; possible: with the grave ones." at screen terminal_form ? name_x : left, at(total - foot_lines - 0.5) left noenhanced
}
set label 3 program . warning at screen left, at(total - 0.7) left noenhanced
set label 4 "Slowest recovery, " . unit_name at screen name_x, at(title_lines + head / 2) left noenhanced
set label 5 "Heat to the tank, " . P_unit at screen right, at(total - foot_lines - per_row * rows - (terminal_form ? 0.5 : 0.9)) right noenhanced
if (top_axis_lines > 0) {
    set label 6 source . ", " . P_unit at screen right, at(title_lines + head / 2) right noenhanced
}

# The legend: what is not there is not in it; an end that is none has words only. Laid out here, since keys keep other
# distances in every terminal.
key_y = total - foot_lines - per_row * rows
row = 0
array at_row[15]
do for [i = 1:15] { at_row[i] = at(key_y + per_row * (i - 0.5)) }
from_x = terminal_form ? left : left + 0.01
to_x = from_x + 0.03
words_x = terminal_form ? left + 0.03 : to_x + 0.012
middle_x = terminal_form ? left : (from_x + to_x) / 2
sign(c) = terminal_form ? c : ""
if (fine) {
    row = row + 1
    set label 100 + row sign("*") at screen middle_x, at_row[row] center @DOT
    set label 200 + row "a run that stays below the rim" at screen words_x, at_row[row] left
}
if (above) {
    row = row + 1
    set label 100 + row sign("^") at screen middle_x, at_row[row] center @TRIANGLE
    set label 200 + row "one slower than this, or never back" at screen words_x, at_row[row] left
}
if (over) {
    row = row + 1
    set label 100 + row sign("x") at screen middle_x, at_row[row] center @CROSS
    set label 200 + row "one that boils over" at screen words_x, at_row[row] left
}
if (known(beyond)) {
    row = row + 1
    set label 100 + row sign("?") at screen middle_x, at_row[row] center @SQUARE
    set label 200 + row "one that leaves what is known of the bath" at screen words_x, at_row[row] left
}
array line_text[6] = [limit_text, need_text, likely_text, possible_text, own_text, leaves_text]
array line_sign[6] = ["-", "|", "#", ":", ".", "/"]
array line_there[6] = [limit, need, likely, possible, own, leaves]
do for [i = 1:6] {
    if (line_text[i] ne "") {
        row = row + 1
        set label 200 + row line_text[i] at screen words_x, at_row[row] left noenhanced
        if (known(line_there[i]) && terminal_form) { set label 100 + row line_sign[i] at screen middle_x, at_row[row] center }
        if (known(line_there[i]) && !terminal_form) { set arrow 100 + row from screen from_x, at_row[row] to screen to_x, at_row[row] nohead ls i }
    }
}
array area_text[2] = [open_both ? "the window: back in time, the freeboard left, and below the rim in both" : "", \
    narrower ? "back in time, but only likely below the rim, or too little freeboard may be left" : ""]
if (!terminal_form) {
    do for [i = 1:2] {
        if (area_text[i] ne "") {
            row = row + 1
            set label 200 + row area_text[i] at screen words_x, at_row[row] left
            set object 100 + row rectangle from screen from_x, at_row[row] - 0.35 / total to screen to_x, at_row[row] + 0.35 / total fs solid 1 noborder fc rgb area_colour[i]
        }
    }
}
plot NaN notitle
unset label
unset arrow
unset object

# The curve -------------------------------------------------------------------------------------------------------------

set border terminal_form ? 3 : 11 lc rgb "#444444"
set tmargin at screen at(title_lines + head + top_axis_lines)
set bmargin at screen at(title_lines + head + top_axis_lines + body)
set xrange [low : end]
set yrange [0 : Y(high)]
set xtics nice(end - low, terminal_form ? 5 : 8) nomirror scale 0.5
set ytics nice(Y(high), 6) nomirror scale 0.5
if (top_axis_lines > 0) {
    set border 7 lc rgb "#444444"
    set x2range [low / efficiency : end / efficiency]
    set x2tics nice((end - low) / efficiency, 8) nomirror scale 0.5
}
across(x) = (x - low) / (end - low) * Y(high)
upright(x) = known(x) ? P(x) : NaN

if (terminal_form) {
    set samples 16
    plot [low:end] \
        '+' using (upright(own)):(across($1)) with points pt "." notitle, \
        '+' using (upright(leaves)):(across($1)) with points pt "/" notitle, \
        '+' using (upright(possible)):(across($1)) with points pt ":" notitle, \
        '+' using (upright(likely)):(across($1)) with points pt "#" notitle, \
        '+' using (upright(need)):(across($1)) with points pt "|" notitle, \
        for [i = 0:66] '+' using (low + (end - low) * i / 66.0):(Y(limit)) every ::0::0 with points pt "-" notitle, \
        "points.tsv" using (P($1)):($3 == 2 ? Y(0.04 * high) : NaN) with points pt "?" notitle, \
        "points.tsv" using (P($1)):($3 == 0 && !($2 <= high) ? Y(high) : NaN) with points pt "^" notitle, \
        "points.tsv" using (P($1)):($3 == 1 ? held($2) : NaN) with points pt "x" notitle, \
        "points.tsv" using (P($1)):($3 == 0 && $2 <= high ? Y($2) : NaN) with points pt "*" notitle
} else {
    if (open_likely) {
        set object 1 rectangle from P(likely_from), graph 0 to P(in_likely), graph 1 behind fs solid 1 noborder fc rgb "#e8e8e8"
    }
    if (open_both) {
        set object 2 rectangle from P(from_both), graph 0 to P(in_both), graph 1 behind fs solid 1 noborder fc rgb "#cfe6d8"
    }
    set grid xtics ytics lt 1 lc rgb "#cccccc" lw 0.5
    post(i) = i == 0 ? 0 : Y(high)
    plot "points.tsv" using (P($1)):($2 <= high ? Y($2) : NaN) with lines lc rgb "#0072b2" lw 2 notitle, \
        Y(limit) with lines ls 1 notitle, \
        "points.tsv" using (upright(need)):(post($0)) with lines ls 2 notitle, \
        "points.tsv" using (upright(likely)):(post($0)) with lines ls 3 notitle, \
        "points.tsv" using (upright(possible)):(post($0)) with lines ls 4 notitle, \
        "points.tsv" using (upright(leaves)):(post($0)) with lines ls 6 notitle, \
        "points.tsv" using (upright(own)):(post($0)) with lines ls 5 notitle, \
        "points.tsv" using (P($1)):($3 == 0 && $2 <= high ? Y($2) : NaN) with points pt 7 ps 0.7 lc rgb "#0072b2" notitle, \
        "points.tsv" using (P($1)):($3 == 0 && !($2 <= high) ? Y(high) : NaN) with points pt 8 ps 0.8 lc rgb "#0072b2" notitle, \
        "points.tsv" using (P($1)):($3 == 1 ? held($2) : NaN) with points pt 2 ps 1 lw 1.5 lc rgb "#d55e00" notitle, \
        "points.tsv" using (P($1)):($3 == 2 ? Y(0.04 * high) : NaN) with points pt 4 ps 0.8 lc rgb "#000000" notitle
}
unset multiplot
set output
