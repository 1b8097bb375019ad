# compare.gp -- two runs over each other on the clock of the first: temperature, steam, level, layer, and what was done.
#
# By hand, from the traces of any two runs (SI, without words):
#     gnuplot -c plots/compare.gp svg pair.svg a.csv b.csv        (or png, pdf, dumb)
# The program starts it in a folder that holds trace-, frame-, lanes- and acts- files of a and b. Texts are data: they are
# read into variables and shown without markup, never carried out.

terminal_form = ARG1 eq "dumb"
by_hand = ARGC > 3
array trace[2]
trace[1] = by_hand ? ARG3 : "trace-a.csv"
trace[2] = by_hand ? ARG4 : "trace-b.csv"
device = ARG1
output = ARG2
common = ARG0[1:strlen(ARG0) - strlen("compare.gp")] . "common.gp"
part = "words"
load common

# What the files say ---------------------------------------------------------------------------------------------------

start = 0.0; end = NaN
T_factor = 1.0; T_offset = -273.15; T_unit = "degC"
L_factor = 1000.0; L_unit = "mm"
F_factor = 3600.0; F_unit = "kg/h"
array starts[2]; array ends[2]; array rim[2] = [NaN, NaN]; array overflow[2] = [NaN, NaN]; array overflow_clock[2]
array may_overflow[2] = [NaN, NaN]
verdicts = 0
array verdict[20]; array verdict_side[20]
array title[2] = ["A", "B"]
array letter[2] = ["a", "b"]
array capital[2] = ["A", "B"]
program = ""
lanes = 0; words = 0; first_lane_b = 0
array lane_name[40]
array word_at[2000]; array word_lane[2000]; array word[2000]

if (!by_hand) {
    do for [i = 1:2] {
        stats "frame-" . letter[i] . ".tsv" using ( \
            is("time") ? (starts[i] = $2, ends[i] = $3, 0) : \
            is("temperature") ? (T_factor = $2, T_offset = $3, T_unit = text(4), 0) : \
            is("length") ? (L_factor = $2, L_unit = text(4), 0) : \
            is("flow") ? (F_factor = $2, F_unit = text(4), 0) : \
            is("rim") ? (rim[i] = $2 * L_factor, 0) : \
            is("overflow") ? (overflow[i] = $2, overflow_clock[i] = text(4), 0) : \
            is("may overflow") ? (may_overflow[i] = $2, 0) : \
            is("verdict") && verdicts < 20 ? (verdicts = verdicts + 1, verdict_side[verdicts] = i, \
                verdict[verdicts] = text(4), 0) : \
            is("title") ? (title[i] = capital[i] . "  " . text(4), 0) : \
            is("program") ? (program = text(4), 0) : 0) nooutput
        if (i == 2) { first_lane_b = lanes }
        stats "lanes-" . letter[i] . ".tsv" using (lanes = lanes + 1, \
            lane_name[lanes] = text(2) eq "" ? "" : capital[i] . " " . text(2), 0) nooutput
        stats "acts-" . letter[i] . ".tsv" using (text(5) eq "" || words == 2000 ? 0 : \
            (words = words + 1, word_lane[words] = $1 + (i == 2 ? first_lane_b : 0), word_at[words] = $2, \
            word[words] = text(5), 0)) nooutput
    }
    start = starts[1]
    end = ends[1] > ends[2] ? ends[1] : ends[2]
}

T(x) = x * T_factor + T_offset
L(x) = x * L_factor
F(x) = x * F_factor
least(x, y) = x < y ? x : y
most(x, y) = x > y ? x : y

set datafile separator comma
set datafile columnheaders
T_low = 1e9; T_high = -1e9; L_low = 1e9; L_high = -1e9; F_high = 0.0; W_high = 0.0; last = 0.0
spells = 0
array spell_from[4000]; array spell_to[4000]; array spell_of[4000]
do for [i = 1:2] {
    was_boiling = 1
    stats trace[i] using ( \
        last = most(last, column("time_s")), \
        T_low = least(T_low, T(column("temperature_K"))), T_high = most(T_high, T(column("temperature_K"))), \
        L_low = least(L_low, L(column("level_m"))), L_high = most(L_high, L(column("level_m"))), \
        F_high = most(F_high, F(column("steam_kg_s"))), W_high = most(W_high, L(column("layer_m"))), \
        boils = column("boiling"), \
        boils < was_boiling && spells < 4000 ? (spells = spells + 1, spell_of[spells] = i, \
            spell_from[spells] = column("time_s")) : 0, \
        spells > 0 && was_boiling < 1 ? (spell_to[spells] = column("time_s")) : 0, \
        was_boiling = boils, 0) nooutput
    if (!(rim[i] == rim[i])) {
        stats trace[i] using (L(column("level_m") + column("freeboard_m"))) name "rim" nooutput
        rim[i] = rim_max
    }
}
if (!(end == end)) { end = last }
L_high = most(L_high, most(rim[1], rim[2]))

# Paper: everything is measured in lines of text ------------------------------------------------------------------------

body = terminal_form ? 9 : 8
head = terminal_form ? 2.0 : 1.7
per_lane = terminal_form ? 1.0 : 1.25
title_step = terminal_form ? 1.0 : 1.3
verdict_step = terminal_form ? 1.0 : 1.1
array title_at[3]     # lines above each title, and above what follows
array verdict_at[20]
title_at[1] = terminal_form ? 0.0 : 0.3
do for [i = 1:2] {
    title_at[i + 1] = title_at[i] + title_step
    do for [k = 1:verdicts] {
        if (verdict_side[k] == i) {
            verdict_at[k] = title_at[i + 1]
            title_at[i + 1] = title_at[i + 1] + verdict_step
        }
    }
    if (!terminal_form) { title_at[i + 1] = title_at[i + 1] + 0.3 }
}
title_lines = title_at[3] + (terminal_form ? 0 : 0.5)
quiet_lines = head + per_lane * 2
acts_lines = lanes > 0 ? head + per_lane * lanes : 0
axis_lines = (terminal_form ? 2 : 1.6) + (start + end > 86400 ? 1 : 0)
foot_lines = terminal_form ? (program eq "" ? 0.0 : 1.0) : program eq "" ? 0.5 : 1.5
total = title_lines + 4 * (head + body) + quiet_lines + acts_lines + axis_lines + foot_lines

spare = 1
edge = 0.1
part = "paper"
load common

half = terminal_form ? 0 : 0.5  # from a line's top to its words
left = terminal_form ? 10.0 / 80 : 0.085

# Colours of Okabe and Ito (2008), told apart without colour by their lines. --------------------------------------------

set style line 1 lc rgb "#d55e00" lw 2 dt solid
set style line 2 lc rgb "#0072b2" lw 2 dt (8, 4)
set style line 3 lc rgb "#000000" lw 2.5 dt solid
set style line 4 lc rgb "#000000" lw 2.5 dt (8, 4)
array side_colour[2] = [0xd55e00, 0x0072b2]
array side_point[2] = ["*", "o"]

# The clock -------------------------------------------------------------------------------------------------------------

array steps[14] = [10, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400, 28800, 86400, 172800]
tick = steps[14]
do for [i = 14:1:-1] { if (end / steps[i] <= (terminal_form ? 6 : 12)) { tick = steps[i] } }
first_tick = ceil(start / tick) * tick
clock_format = start + end > 86400 ? "%k:%M\nday %d" : "%k:%M"

# Axes: at least so much between their ends; three to six ticks.
few = terminal_form ? 3.0 : 5.0
bottom(x, y, span) = y - x < span ? (x + y - span) / 2 : x - 0.04 * (y - x)
top(x, y, span) = y - x < span ? (x + y + span) / 2 : y + 0.06 * (y - x)

# The page: titles that are the legend, and foot -----------------------------------------------------------------------

part = "page"
load common
big = terminal_form ? "" : device eq "svg" ? ",15" : device eq "png" ? ",11" : ",6.6"
do for [i = 1:2] {
    y = at(title_at[i] + half * title_step)
    words_of_side = terminal_form ? side_point[i] . " " . title[i] : title[i]
    set label i words_of_side at screen left, y left noenhanced font big
    if (!terminal_form) { set arrow i from screen 0.012, y to screen left - 0.012, y nohead ls i }
}
do for [k = 1:verdicts] { set label 10 + k verdict[k] at screen left, at(verdict_at[k] + half * verdict_step) left noenhanced }
if (program ne "") {
    set label 3 program . warning at screen left, at(total - (terminal_form ? 1 : 0.7)) left noenhanced
}
plot NaN notitle
unset label
unset arrow

# The panels over time -------------------------------------------------------------------------------------------------

set border 3 lc rgb "#444444"
set xrange [start : start + end]
set xtics first_tick, tick time format ""
set xtics nomirror scale 0.5
set ytics nomirror scale 0.5
if (!terminal_form) { set grid xtics ytics lt 1 lc rgb "#cccccc" lw 0.5 }
if (!terminal_form) {
    do for [i = 1:2] {
        if (overflow[i] == overflow[i]) {
            set arrow i from start + overflow[i], graph 0 to start + overflow[i], graph 1 nohead front lc rgb side_colour[i] lw 1.5 dt (10, 3, 2, 3)
        }
    }
}
line = title_lines
array panel[4]
panel[1] = "Bath, " . T_unit
panel[2] = "Steam, " . F_unit
may = may_overflow[1] == may_overflow[1] || may_overflow[2] == may_overflow[2]
panel[3] = "Swelled level, " . L_unit . (terminal_form ? " (= rim" . (may ? ", ^ it may boil over" : "") . ")" \
    : "; rim black" . (may ? "; triangle: it may boil over, if the water mixes in faster" : ""))
panel[4] = "Water afloat, " . L_unit
array panel_low[4]
array panel_high[4]
panel_low[1] = bottom(T_low, T_high, 2 * T_factor)
panel_high[1] = top(T_low, T_high, 2 * T_factor)
panel_low[2] = 0
panel_high[2] = F_high > 0 ? 1.06 * F_high : 1.0
panel_low[3] = bottom(L_low, L_high, 0.05 * L_factor)
panel_high[3] = top(L_low, L_high, 0.05 * L_factor)
panel_low[4] = 0
panel_high[4] = W_high > 0.001 * L_factor ? 1.06 * W_high : 0.001 * L_factor
reading(p) = p == 1 ? T(column("temperature_K")) : p == 2 ? F(column("steam_kg_s")) : L(column(p == 3 ? "level_m" : "layer_m"))

do for [p = 1:4] {
    set tmargin at screen at(line + head)
    set bmargin at screen at(line + head + body)
    low = panel_low[p]
    high = panel_high[p]
    set yrange [low : high]
    set ytics nice(high - low, few)
    set label 1 panel[p] at screen name_x, at(line + head / 2 + 0.1) left noenhanced
    unset label 2
    unset label 3
    if (p == 2) {
        do for [i = 1:2] {
            if (overflow[i] == overflow[i]) {
                set label 1 + i capital[i] . " from " . overflow_clock[i] . " on: after overflow, not a prediction" \
                    at screen right, at(line + head / 2 + 0.1 + (i == 1 && overflow[2] == overflow[2] ? -0.9 : 0)) right noenhanced
            }
        }
    }
    may_point = terminal_form ? "^" : ""
    do for [i = 1:2] {
        unset label 30 + i
        if (p == 3 && may_overflow[i] == may_overflow[i]) {
            set label 30 + i may_point at start + may_overflow[i], first rim[i] center front
            if (!terminal_form) { set label 30 + i point pt 9 ps 1.6 lc rgb side_colour[i] }
        }
    }
    if (terminal_form) {
        plot for [i = 1:2] trace[i] using (start + column("time_s")):(reading(p)) with points pt side_point[i] notitle, \
            for [i = 1:2] trace[i] using (start + column("time_s")):(p == 3 ? rim[i] : NaN) with points pt "=" notitle
    } else {
        plot for [i = 1:2] (p == 3 ? rim[i] : NaN) with lines ls 2 + i notitle, \
            for [i = 1:2] trace[i] using (start + column("time_s")):(reading(p)) with lines ls i notitle
    }
    line = line + head + body
}

# When each was quiet, and what was done -------------------------------------------------------------------------------

unset arrow  # they would cross words

unset label
unset ytics
unset grid
if (!terminal_form) { set grid xtics lt 1 lc rgb "#cccccc" lw 0.5 }
set tmargin at screen at(line + head)
set bmargin at screen at(line + head + per_lane * 2)
set yrange [terminal_form ? 3 : 2.5 : terminal_form ? 1 : 0.5]
set label 1 "Quiet: it does not boil" . (terminal_form ? " (q)" : "") at screen name_x, at(line + head / 2 + 0.1) left noenhanced
set label 2 "A" at graph -0.01, first 1 right noenhanced
set label 3 "B" at graph -0.01, first 2 right noenhanced
if (lanes == 0) { set xtics format clock_format }
if (terminal_form) {
    plot for [i = 1:2] trace[i] using (start + column("time_s")):(column("boiling") > 0 ? NaN : i) with points pt "q" notitle
} else {
    do for [i = 1:spells] {
        set object i rectangle from start + spell_from[i], first spell_of[i] - 0.42 to start + spell_to[i], first spell_of[i] + 0.42 \
            fs solid 0.6 noborder fc rgb side_colour[spell_of[i]]
    }
    plot NaN notitle
}
unset object
unset label
line = line + head + per_lane * 2

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
    set xtics format clock_format
    lane(i) = $1 + (i == 2 ? first_lane_b : 0)
    if (terminal_form) {
        plot for [i = 1:2] "acts-" . letter[i] . ".tsv" using (start + $2):(lane(i)) with points pt "|" notitle
    } else {
        plot for [i = 1:2] "acts-" . letter[i] . ".tsv" using (start + $2):(lane(i)):(start + $2):(start + $3):(lane(i) - 0.42):(lane(i) + 0.42) \
                with boxxyerror fs solid 0.3 noborder fc rgb side_colour[i] notitle, \
            for [i = 1:2] "acts-" . letter[i] . ".tsv" using (start + $2):(lane(i) - 0.42):(0):(0.84) with vectors nohead lc rgb "#000000" lw 1 notitle
    }
}
unset multiplot
set output
