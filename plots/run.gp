# run.gp -- a run over the clock: temperature, steam, level and layer, what was done, what was found.
#
# By hand, from the trace of any run (SI, without words):
#     build/boilback run FILE --csv trace.csv --step '1 s'
#     gnuplot -c plots/run.gp svg picture.svg trace.csv        (or png, pdf, dumb)
# The program starts it in a folder that holds trace.csv, frame.tsv, lanes.tsv, acts.tsv and marks.tsv. Texts are data:
# they are read into variables and shown without markup, never carried out.

terminal_form = ARG1 eq "dumb"
by_hand = ARGC > 2
trace = by_hand ? ARG3 : "trace.csv"
device = ARG1
output = ARG2
common = ARG0[1:strlen(ARG0) - strlen("run.gp")] . "common.gp"
part = "words"
load common

# What the files say ---------------------------------------------------------------------------------------------------

start = 0.0; end = NaN; overflow = NaN
T_factor = 1.0; T_offset = -273.15; T_unit = "degC"
L_factor = 1000.0; L_unit = "mm"
F_factor = 3600.0; F_unit = "kg/h"
rim = NaN; highest = NaN
title = ""; program = ""
lanes = 0; words = 0; marks = 0; mark_lanes = 0
array lane_name[20]
array word_at[1000]; array word_lane[1000]; array word[1000]
array mark_number[50]; array mark_at[50]; array mark_lane[50]; array mark_grave[50]; array mark_likely[50]
array mark_clock[50]; array mark_text[50]

if (!by_hand) {
    stats "frame.tsv" using ( \
        is("time") ? (start = $2, end = $3, 0) : \
        is("temperature") ? (T_factor = $2, T_offset = $3, T_unit = text(4), 0) : \
        is("length") ? (L_factor = $2, L_unit = text(4), 0) : \
        is("flow") ? (F_factor = $2, F_unit = text(4), 0) : \
        is("rim") ? (rim = $2 * L_factor, 0) : \
        is("highest") ? (highest = $2 * L_factor, 0) : \
        is("overflow") ? (overflow = $2, overflow_clock = text(4), 0) : \
        is("title") ? (title = text(4), 0) : \
        is("program") ? (program = text(4), 0) : 0) nooutput
    stats "lanes.tsv" using (lanes = lanes + 1, lane_name[lanes] = text(2), 0) nooutput
    stats "acts.tsv" using (text(5) eq "" || words == 1000 ? 0 : \
        (words = words + 1, word_lane[words] = $1, word_at[words] = $2, word[words] = text(5), 0)) nooutput
    stats "marks.tsv" using (marks = marks + 1, mark_number[marks] = int($1), mark_at[marks] = $2, \
        mark_lane[marks] = $3, mark_grave[marks] = int($4), mark_likely[marks] = int($5), mark_clock[marks] = text(6), \
        mark_text[marks] = text(7), mark_lanes = $3 + 1 > mark_lanes ? $3 + 1 : mark_lanes, 0) nooutput
}
timed = 0
do for [i = 1:marks] { if (mark_at[i] == mark_at[i]) { timed = timed + 1 } }
if (timed == 0) { mark_lanes = 0 }

T(x) = x * T_factor + T_offset
L(x) = x * L_factor
F(x) = x * F_factor

set datafile separator comma
set datafile columnheaders
stats trace using (column("time_s")):(L(column("level_m"))) name "level" nooutput
stats trace using (L(column("still_level_m"))) name "still" nooutput
stats trace using (L(column("layer_m"))) name "layer" nooutput
stats trace using (T(column("temperature_K"))) name "bath" nooutput
stats trace using (T(column("boiling_point_K"))) name "boil" nooutput
stats trace using (F(column("steam_kg_s"))) name "steam" nooutput
spells = 0
was_boiling = 1
array spell_from[2000]; array spell_to[2000]
stats trace using ( \
    boils = column("boiling"), \
    boils < was_boiling && spells < 2000 ? (spells = spells + 1, spell_from[spells] = column("time_s")) : 0, \
    spells > 0 && was_boiling < 1 ? (spell_to[spells] = column("time_s")) : 0, \
    was_boiling = boils, 0) nooutput
if (!(end == end)) { end = level_max_x }
if (!(rim == rim)) {
    stats trace using (L(column("level_m") + column("freeboard_m"))) name "rim" nooutput
    rim = rim_max
}

# Paper: everything is measured in lines of text ------------------------------------------------------------------------

body_T = terminal_form ? 9 : 8; body_F = 7; body_L = terminal_form ? 9 : 8; body_W = 5
head = terminal_form ? 2.0 : 1.7
per_lane = terminal_form ? 1.0 : 1.25
per_mark = terminal_form ? 1.0 : 1.3
title_lines = terminal_form ? (title eq "" ? 0.0 : 1.0) : title eq "" ? 0.3 : 1.7
acts_lines = lanes > 0 ? head + per_lane * lanes : 0
marks_lines = mark_lanes > 0 ? head + per_mark * mark_lanes : 0
axis_lines = (terminal_form ? 2 : 1.6) + (start + end > 86400 ? 1 : 0)
list_lines = marks > 0 ? (terminal_form ? 1 : 1.2) * (marks + 1) : 0
foot_lines = terminal_form ? (program eq "" ? 0.0 : 1.0) : program eq "" ? 0.5 : 1.5
total = title_lines + 4 * head + body_T + body_F + body_L + body_W + acts_lines + marks_lines + axis_lines + list_lines \
    + foot_lines

spare = 1
edge = 0.1
part = "paper"
load common

half = terminal_form ? 0 : 0.5  # from a line's top to its words

# Colours of Okabe and Ito (2008), told apart without colour by their lines. --------------------------------------------

set style line 1 lc rgb "#d55e00" lw 2 dt solid
set style line 2 lc rgb "#000000" lw 1.2 dt (8, 4)
set style line 3 lc rgb "#0072b2" lw 2 dt solid
set style line 4 lc rgb "#009e73" lw 1.5 dt (8, 3, 2, 3)
set style line 5 lc rgb "#000000" lw 2.5 dt solid
set style line 6 lc rgb "#000000" lw 1.2 dt (2, 4)
quiet_colour = 0xdddddd
array grave_colour[4] = [0x56b4e9, 0xf0e442, 0xe69f00, 0xd55e00]
array act_colour[5] = [0xe69f00, 0x56b4e9, 0xcc79a7, 0x009e73, 0x999999]
array grave_word[4] = ["NOTICE", "CAUTION", "WARNING", "DANGER"]
mark_colour(i) = mark_likely[i] ? grave_colour[mark_grave[i] + 1] : 0xffffff

# The clock -------------------------------------------------------------------------------------------------------------

array steps[14] = [10, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400, 28800, 86400, 172800]
tick = steps[14]
do for [i = 14:1:-1] { if (end / steps[i] <= (terminal_form ? 6 : 12)) { tick = steps[i] } }
first_tick = ceil(start / tick) * tick
clock_format = start + end > 86400 ? "%k:%M\nday %d" : "%k:%M"

# The page: title, foot, and the list of findings ----------------------------------------------------------------------

part = "page"
load common
if (title ne "") { set label 1 title at screen 0.5, at(half * title_lines) center noenhanced font big }
if (program ne "") {
    set label 2 program . warning at screen left, at(total - (terminal_form ? 1 : 0.7)) left noenhanced
}
step = terminal_form ? 1 : 1.2
list_top = total - foot_lines - list_lines
number_x = terminal_form ? 0.04 : 0.025
clock_x = terminal_form ? 0.175 : 0.105
grave_x = terminal_form ? 0.2 : 0.115
text_x = terminal_form ? 0.325 : 0.205
if (marks > 0) { set label 3 "Findings (? possible only)" at screen name_x, at(list_top + step * half) left noenhanced }
do for [i = 1:marks] {
    y = at(list_top + step * (i + half))
    if (mark_number[i] > 0) {
        set label 100 + i sprintf("%d", mark_number[i]) at screen number_x, y right noenhanced
        set label 200 + i mark_clock[i] at screen clock_x, y right noenhanced
        set label 300 + i grave_word[mark_grave[i] + 1] . (mark_likely[i] ? "" : "?") at screen grave_x, y left noenhanced
    }
    set label 400 + i mark_text[i] at screen text_x, y left noenhanced
}
plot NaN notitle
unset label

# The panels over time -------------------------------------------------------------------------------------------------

set border 3 lc rgb "#444444"
set xrange [start : start + end]
set xtics first_tick, tick time format ""
set xtics nomirror scale 0.5
set ytics nomirror scale 0.5
if (!terminal_form) { set grid xtics ytics lt 1 lc rgb "#cccccc" lw 0.5 }
do for [i = 1:spells] {
    set object i rectangle from start + spell_from[i], graph 0 to start + spell_to[i], graph 1 behind \
        fs solid 1 noborder fc rgb quiet_colour
}
set key horizontal right bottom at graph 1, 1 noenhanced samplen 2.5
do for [i = 1:marks] {
    if (mark_number[i] > 0 && mark_at[i] == mark_at[i]) {
        set arrow i from start + mark_at[i], graph 0 to start + mark_at[i], graph 1 nohead back lc rgb "#666666" lw 0.8 dt (2, 3)
    }
}
if (overflow == overflow) {
    set arrow 99 from start + overflow, graph 0 to start + overflow, graph 1 nohead front lc rgb "#d55e00" lw 1.5 dt (10, 3, 2, 3)
}
if (terminal_form) {
    unset object
    unset arrow
    unset key
}

# Axes: at least so much between their ends; three to six ticks.
few = terminal_form ? 3.0 : 5.0
bottom(x, y, least) = y - x < least ? (x + y - least) / 2 : x - 0.04 * (y - x)
top(x, y, least) = y - x < least ? (x + y + least) / 2 : y + 0.06 * (y - x)

line = title_lines
low = bath_min < boil_min ? bath_min : boil_min
high = bath_max > boil_max ? bath_max : boil_max
set tmargin at screen at(line + head)
set bmargin at screen at(line + head + body_T)
least = bottom(low, high, 2 * T_factor)
most = top(low, high, 2 * T_factor)
quiet_y = least - 0.13 * (most - least)  # a line of its own, above the axis
set yrange [terminal_form ? least - 0.25 * (most - least) : least : most]
set ytics nice(most - least, few)
set label 1 "Bath, " . T_unit . (terminal_form ? " (* temperature, - boiling point, q quiet: it does not boil)" : "") at screen name_x, at(line + head / 2 + 0.1) left noenhanced
if (terminal_form) {
    plot trace using (start + column("time_s")):(T(column("boiling_point_K"))) with points pt "-" notitle, \
        trace using (start + column("time_s")):(T(column("temperature_K"))) with points pt "*" notitle, \
        trace using (start + column("time_s")):(column("boiling") > 0 ? NaN : (quiet_y)) with points pt "q" notitle
} else {
    plot NaN with boxes fs solid 1 noborder fc rgb quiet_colour title "quiet: it does not boil", \
        trace using (start + column("time_s")):(T(column("temperature_K"))) with lines ls 1 title "temperature", \
        trace using (start + column("time_s")):(T(column("boiling_point_K"))) with lines ls 2 title "boiling point"
}
line = line + head + body_T

set tmargin at screen at(line + head)
set bmargin at screen at(line + head + body_F)
most = steam_max > 0 ? 1.06 * steam_max : 1.0
set yrange [0 : most]
set ytics nice(most, few)
set label 1 "Steam, " . F_unit at screen name_x, at(line + head / 2 + 0.1) left noenhanced
if (overflow == overflow) {
    set label 2 (terminal_form ? "f" : "after the broken line, f") . "rom " . overflow_clock \
        . " on: after overflow, not a prediction" at screen right, at(line + head / 2 + 0.1) right noenhanced
}
if (terminal_form) {
    plot trace using (start + column("time_s")):(F(column("steam_kg_s"))) with points pt "*" notitle
} else {
    plot trace using (start + column("time_s")):(F(column("steam_kg_s"))) with lines ls 3 notitle
}
unset label 2
line = line + head + body_F

low = still_min
high = level_max_y > rim ? level_max_y : rim
set tmargin at screen at(line + head)
set bmargin at screen at(line + head + body_L)
least = bottom(low, high, 0.05 * L_factor)
most = top(low, high, 0.05 * L_factor)
set yrange [least : most]
set ytics nice(most - least, few)
set label 1 "Level, " . L_unit . (terminal_form ? " (* swelled, . still, - least freeboard, = rim)" : "") at screen name_x, at(line + head / 2 + 0.1) left noenhanced
if (terminal_form) {
    plot trace using (start + column("time_s")):(L(column("still_level_m"))) with points pt "." notitle, \
        trace using (start + column("time_s")):(L(column("level_m"))) with points pt "*" notitle, \
        trace using (start + column("time_s")):(highest) with points pt "-" notitle, \
        trace using (start + column("time_s")):(rim) with points pt "=" notitle
} else {
    plot rim with lines ls 5 title "rim", \
        highest with lines ls 6 title (highest == highest ? "least freeboard" : ""), \
        trace using (start + column("time_s")):(L(column("level_m"))) with lines ls 3 title "swelled", \
        trace using (start + column("time_s")):(L(column("still_level_m"))) with lines ls 4 title "still"
}
line = line + head + body_L

set tmargin at screen at(line + head)
set bmargin at screen at(line + head + body_W)
most = layer_max > 0.001 * L_factor ? 1.06 * layer_max : 0.001 * L_factor
set yrange [0 : most]
set ytics nice(most, few)
set label 1 "Water afloat, " . L_unit at screen name_x, at(line + head / 2 + 0.1) left noenhanced
last_panel = lanes == 0 && mark_lanes == 0
if (last_panel) { set xtics format clock_format }
if (terminal_form) {
    plot trace using (start + column("time_s")):(L(column("layer_m"))) with points pt "*" notitle
} else {
    plot trace using (start + column("time_s")):(L(column("layer_m"))) with filledcurves y1=0 fs solid 0.5 lc rgb "#56b4e9" notitle, \
        trace using (start + column("time_s")):(L(column("layer_m"))) with lines lc rgb "#0072b2" lw 1.2 notitle
}
line = line + head + body_W

# What was done, and the marks of what was found -----------------------------------------------------------------------

unset object
unset key
unset ytics
unset grid
if (overflow == overflow && !terminal_form) {  # behind the words from here on
    set arrow 99 from start + overflow, graph 0 to start + overflow, graph 1 nohead back lc rgb "#d55e00" lw 1.5 dt (10, 3, 2, 3)
}
if (!terminal_form) { set grid xtics lt 1 lc rgb "#cccccc" lw 0.5 }
set datafile nocolumnheaders
set datafile separator tab
if (lanes > 0) {
    set tmargin at screen at(line + head)
    set bmargin at screen at(line + head + per_lane * lanes)
    set yrange [lanes + (terminal_form ? 1 : 0.5) : terminal_form ? 1 : 0.5]
    set label 1 "What is done" at screen name_x, at(line + head / 2 + 0.1) left noenhanced
    do for [i = 1:lanes] { set label 20 + i lane_name[i] at graph -0.01, first i right noenhanced }
    do for [i = 1:words] {
        set label 100 + i word[i] at start + word_at[i], first word_lane[i] left offset character 0.4, 0 noenhanced front
    }
    if (mark_lanes == 0) { set xtics format clock_format }
    if (terminal_form) {
        plot "acts.tsv" using (start + $2):1 with points pt "|" notitle
    } else {
        plot for [k = 0:4] "acts.tsv" using (start + $2):($4 == k ? $1 : NaN):(start + $2):(start + $3):($1 - 0.42):($1 + 0.42) \
            with boxxyerror fs solid 0.5 noborder fc rgb act_colour[k + 1] notitle, \
            "acts.tsv" using (start + $2):($1 - 0.42):(0):(0.84) with vectors nohead lc rgb "#000000" lw 1 notitle
    }
    unset label
    line = line + head + per_lane * lanes
}

if (mark_lanes > 0) {
    set tmargin at screen at(line + head)
    set bmargin at screen at(line + head + per_mark * mark_lanes)
    set yrange [mark_lanes - (terminal_form ? 0 : 0.5) : terminal_form ? 0 : -0.5]
    set label 1 "Found, see below" at screen name_x, at(line + head / 2 + 0.1) left noenhanced
    set xtics format clock_format
    do for [i = 1:marks] {
        if (mark_number[i] > 0 && mark_at[i] == mark_at[i]) {
            set label 20 + i sprintf("%d", mark_number[i]) at start + mark_at[i], first mark_lane[i] center noenhanced front
        }
    }
    if (terminal_form) {
        plot NaN notitle
    } else {
        plot "marks.tsv" using ($1 > 0 ? start + $2 : NaN):3 with points pt 7 ps 2.2 lc rgb "#000000" notitle, \
            "marks.tsv" using ($1 > 0 ? start + $2 : NaN):3:($5 == 1 ? grave_colour[int($4) + 1] : 0xffffff) with points pt 7 ps 1.9 lc rgb variable notitle
    }
}
unset multiplot
set output
