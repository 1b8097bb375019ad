# curves.gp -- panels of curves over one axis: properties of a solution, or what was measured beside the runs.
#
# The program starts it in a folder that holds frame.tsv and curves.tsv, blocks of x and y, one a curve. Texts are data: they are
# read into variables and shown without markup, never carried out.

terminal_form = ARG1 eq "dumb"
device = ARG1
output = ARG2
common = ARG0[1:strlen(ARG0) - strlen("curves.gp")] . "common.gp"
part = "words"
load common

# What the files say ---------------------------------------------------------------------------------------------------

title = ""; program = ""; said = ""; axis = ""; start = 0.0; clock = 0; from = NaN; to = NaN
panels = 0; curves = 0
array panel_text[8]
array curve_panel[24]; array curve_kind[24]; array curve_text[24]
stats "frame.tsv" using ( \
    is("said") ? (said = text(4), 0) : \
    is("axis") ? (axis = text(4), from = $2, to = $3, 0) : \
    is("clock") ? (start = $2, clock = 1, 0) : \
    is("panel") ? (panels = panels + 1, panel_text[panels] = text(4), 0) : \
    is("curve") ? (curves = curves + 1, curve_panel[curves] = panels, curve_kind[curves] = int($2) + 1, curve_text[curves] = text(4), 0) : \
    is("title") ? (title = text(4), 0) : \
    is("program") ? (program = text(4), 0) : 0) nooutput

# Paper ----------------------------------------------------------------------------------------------------------------

head = terminal_form ? 2.0 : 1.9
body = terminal_form ? 8 : 9
title_lines = terminal_form ? 2 : 3.2
axis_lines = terminal_form ? 3 : 2.8
foot_lines = terminal_form ? 1 : 1.5
total = title_lines + panels * (head + body) + axis_lines + foot_lines
spare = 1
edge = 0
part = "paper"
load common

# Colours of Okabe and Ito (2008), told apart without colour by their lines and points. A line, one more, and points.
set style line 1 lc rgb "#0072b2" lw 2 dt solid
set style line 2 lc rgb "#d55e00" lw 1.5 dt (8, 4)
set style line 3 lc rgb "#000000" pt 6 ps 0.6 lw 1.2
array kind_sign[3] = ["*", "-", "o"]

part = "page"
load common
set label 1 title at screen 0.5, at(terminal_form ? 0.5 : 0.9) center noenhanced font big
set label 2 said at screen 0.5, at(terminal_form ? 1.5 : 2.4) center noenhanced
set label 3 program . warning at screen name_x, at(total - 0.7) left noenhanced
set label 4 axis at screen right, at(total - foot_lines - (terminal_form ? 0.5 : 0.8)) right noenhanced
plot NaN notitle
unset label

# The panels -----------------------------------------------------------------------------------------------------------

set border 3 lc rgb "#444444"
room = 0.03 * (to - from)
set xrange [start + from - room : start + to + room]
if (clock) {
    array steps[14] = [10, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400, 28800, 86400, 172800]
    tick = steps[14]
    do for [i = 14:1:-1] { if ((to - from) / steps[i] <= (terminal_form ? 6 : 12)) { tick = steps[i] } }
    set xtics tick time nomirror scale 0.5 format ""
} else {
    set xtics nice(to - from, terminal_form ? 5 : 8) nomirror scale 0.5 format ""
}
set yrange [*:*]
set offsets 0, 0, graph 0.06, graph 0.06
if (!terminal_form) { set grid xtics ytics lt 1 lc rgb "#cccccc" lw 0.5 }
if (!terminal_form) { set key horizontal right bottom at graph 1, 1 noenhanced samplen 2.5 }
line = title_lines
do for [p = 1:panels] {
    set tmargin at screen at(line + head)
    set bmargin at screen at(line + head + body)
    set ytics autofreq nomirror scale 0.5
    if (p == panels) { set xtics format (clock ? "%k:%M" : "%g") }
    signs = ""
    do for [k = 1:curves] {
        if (terminal_form && curve_panel[k] == p && curve_text[k] ne "") {
            signs = signs . (signs eq "" ? "  (" : ", ") . kind_sign[curve_kind[k]] . " " . curve_text[k]
        }
    }
    set label 1 panel_text[p] . signs . (signs eq "" ? "" : ")") at screen name_x, at(line + head / 2 + 0.1) left noenhanced
    here(k) = curve_panel[k] == p
    if (terminal_form) {
        plot for [k = 1:curves] "curves.tsv" index (k - 1) using (start + $1):(here(k) ? $2 : NaN) with points pt kind_sign[curve_kind[k]] notitle
    } else {
        plot for [k = 1:curves] "curves.tsv" index (k - 1) using (start + $1):(here(k) && curve_kind[k] < 3 ? $2 : NaN) with lines ls curve_kind[k] notitle, \
            for [k = 1:curves] "curves.tsv" index (k - 1) using (start + $1):(here(k) && curve_kind[k] == 3 ? $2 : NaN) with points ls 3 notitle, \
            for [k = 1:curves] NaN with lines ls curve_kind[k] title (here(k) && curve_kind[k] < 3 ? curve_text[k] : ""), \
            for [k = 1:curves] NaN with points ls 3 title (here(k) && curve_kind[k] == 3 ? curve_text[k] : "")
    }
    line = line + head + body
}
unset multiplot
set output
