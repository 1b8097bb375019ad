# explore.gp -- a study: how likely each finding is, and where the spread of the results comes from.
#
# The program starts it in a folder that holds frame.tsv, odds.tsv and causes.tsv. Texts are data: they are read into
# variables and shown without markup, never carried out.

terminal_form = ARG1 eq "dumb"
device = ARG1
output = ARG2
common = ARG0[1:strlen(ARG0) - strlen("explore.gp")] . "common.gp"
part = "words"
load common

# What the files say ---------------------------------------------------------------------------------------------------

title = ""; program = ""; said = ""
odds = 0; causes = 0; targets = 0
array odds_text[24]; array odds_chance[24]; array odds_kind[24]
array cause_text[40]; array target_text[8]; array target_first[8]; array target_last[8]

stats "frame.tsv" using ( \
    is("said") ? (said = text(4), 0) : \
    is("title") ? (title = text(4), 0) : \
    is("program") ? (program = text(4), 0) : 0) nooutput
stats "odds.tsv" using (odds = odds + 1, odds_text[odds] = text(5), odds_chance[odds] = $1, odds_kind[odds] = int($4) + 1, 0) nooutput
high = 1.0
stats "causes.tsv" using ( \
    causes = causes + 1, cause_text[causes] = text(7), \
    text(6) ne "" ? (targets = targets + 1, target_text[targets] = text(6), target_first[targets] = causes, 0) : 0, \
    target_last[targets] = causes, \
    high = $4 + $5 > high ? $4 + $5 : high, 0) nooutput
high = high > 1.5 ? 1.5 : high

# Paper: everything is measured in lines of text ------------------------------------------------------------------------

head = terminal_form ? 2.0 : 1.7
per_row = terminal_form ? 1 : 1.3
axis_lines = terminal_form ? 2 : 1.6
title_lines = terminal_form ? 2 : 3.2
legend_lines = terminal_form ? 3 : 2.8
foot_lines = terminal_form ? 1 : 1.5
odds_lines = odds > 0 ? head + per_row * odds + axis_lines : 0
causes_lines = targets > 0 ? legend_lines + targets * (head + axis_lines) + per_row * causes : 0
total = title_lines + odds_lines + causes_lines + foot_lines

spare = 1
edge = 0
part = "paper"
load common

left = terminal_form ? 32.0 / 80 : 0.31
right = terminal_form ? 66.0 / 80 : 0.85
columns = 34  # of a bar in the terminal

# Colours of Okabe and Ito (2008): signal words from light to dark, what is wished for in green. ------------------------

array kind_colour[5] = [0x56b4e9, 0xf0e442, 0xe69f00, 0xd55e00, 0x009e73]
array kind_word[5] = ["NOTICE", "CAUTION", "WARNING", "DANGER", ""]
total_colour = "#bfd9ea"
first_colour = "#0072b2"

# The page --------------------------------------------------------------------------------------------------------------

part = "page"
load common
set label 1 title at screen 0.5, at(terminal_form ? 0.5 : 0.9) center noenhanced font big
set label 2 said at screen 0.5, at(terminal_form ? 1.5 : 2.4) center noenhanced
set label 3 program . warning at screen name_x, at(total - 0.7) left noenhanced
line = title_lines + odds_lines
if (targets > 0) {
    set label 4 "Where the spread comes from: shares of the variance, Sobol' indices" at screen name_x, at(line + (terminal_form ? 1.5 : 0.8)) left noenhanced
    if (terminal_form) {
        set label 5 "# alone, = with others, - to the end of its 95 % interval" at screen name_x, at(line + 2.5) left noenhanced
    } else {
        y = line + 2.1
        set object 1 rectangle from screen 0.012, at(y + 0.4) to screen 0.045, at(y - 0.4) fs solid 1 noborder fc rgb total_colour
        set object 2 rectangle from screen 0.39, at(y + 0.22) to screen 0.423, at(y - 0.22) fs solid 1 noborder fc rgb first_colour
        set label 5 "with others (total): stays if all others are known" at screen 0.053, at(y) left noenhanced
        set label 6 "alone (first-order): goes if this is known; lines: 95 %" at screen 0.431, at(y) left noenhanced
    }
}
plot NaN notitle
unset label
unset object

# Chances --------------------------------------------------------------------------------------------------------------

set border 3 lc rgb "#444444"
set xtics nomirror scale 0.5
unset ytics
line = title_lines
sure(x) = x > 0 && x < 0.005 ? "<1 %" : x < 1 && x >= 0.995 ? ">99 %" : sprintf("%.0f %%", 100 * x)
if (odds > 0) {
    set tmargin at screen at(line + head)
    set bmargin at screen at(line + head + per_row * odds)
    set xrange [0:100]
    set xtics 0, 20
    set format x "%.0f"
    set yrange [odds - 0.5 : -0.5]
    if (!terminal_form) { set grid xtics lt 1 lc rgb "#cccccc" lw 0.5 }
    set label 1 "Chance of each finding, % of draws" . (terminal_form ? " (- to the end of its interval)" : "; lines: 95 % interval") at screen name_x, at(line + head / 2) left noenhanced
    do for [i = 1:odds] {
        set label 20 + i odds_text[i] at screen left - 0.012, first i - 1 right noenhanced
        set label 60 + i sure(odds_chance[i]) at screen right + (terminal_form ? 0.075 : 0.062), first i - 1 right noenhanced
        set label 100 + i kind_word[odds_kind[i]] at screen right + (terminal_form ? 0.09 : 0.07), first i - 1 left noenhanced
    }
    if (terminal_form) {
        plot for [k = 0:columns - 1] "odds.tsv" using (100 * (k + 0.5) / columns):($3 > (k + 0.5) / columns ? $0 : NaN) with points pt "-" notitle, \
            for [k = 0:columns - 1] "odds.tsv" using (100 * (k + 0.5) / columns):($1 > (k + 0.5) / columns ? $0 : NaN) with points pt "#" notitle
    } else {
        plot "odds.tsv" using (50 * $1):($0):(0):(100 * $1):($0 - 0.36):($0 + 0.36):(kind_colour[int($4) + 1]) with boxxyerror fs solid 1 border lc rgb "#444444" fc rgb variable notitle, \
            "odds.tsv" using (100 * $1):($0):(100 * $2):(100 * $3) with xerrorbars pt 0 lc rgb "#000000" lw 1.2 notitle
    }
    unset label
    line = line + odds_lines
}

# Causes: the largest first --------------------------------------------------------------------------------------------

line = line + legend_lines
set xrange [0:high]
set xtics 0, 0.2
set format x "%.1f"
do for [t = 1:targets] {
    n = target_last[t] - target_first[t] + 1
    set tmargin at screen at(line + head)
    set bmargin at screen at(line + head + per_row * n)
    set yrange [target_first[t] - 1 + n - 0.5 : target_first[t] - 1 - 0.5]
    set label 1 "of the " . target_text[t] at screen left, at(line + head / 2 + (terminal_form ? 0 : 0.15)) left noenhanced
    do for [i = target_first[t]:target_last[t]] {
        set label 20 + i cause_text[i] at screen left - 0.012, first i - 1 right noenhanced
    }
    inside(i) = i >= target_first[t] - 1 && i < target_last[t]
    if (terminal_form) {
        plot for [k = 0:columns - 1] "causes.tsv" using (high * (k + 0.5) / columns):(inside($0) && $4 + $5 > high * (k + 0.5) / columns ? $0 : NaN) with points pt "-" notitle, \
            for [k = 0:columns - 1] "causes.tsv" using (high * (k + 0.5) / columns):(inside($0) && $4 > high * (k + 0.5) / columns ? $0 : NaN) with points pt "=" notitle, \
            for [k = 0:columns - 1] "causes.tsv" using (high * (k + 0.5) / columns):(inside($0) && $2 > high * (k + 0.5) / columns ? $0 : NaN) with points pt "#" notitle
    } else {
        clip(x) = x < 0 ? 0 : x > high ? high : x
        plot "causes.tsv" using (0):(inside($0) ? $0 : NaN):(0):(clip($4)):($0 - 0.4):($0 + 0.4) with boxxyerror fs solid 1 noborder fc rgb total_colour notitle, \
            "causes.tsv" using (0):(inside($0) ? $0 : NaN):(0):(clip($2)):($0 - 0.16):($0 + 0.16) with boxxyerror fs solid 1 noborder fc rgb first_colour notitle, \
            "causes.tsv" using (clip($4)):(inside($0) ? $0 - 0.28 : NaN):(clip($4 - $5)):(clip($4 + $5)) with xerrorbars pt 0 lc rgb "#000000" lw 1 notitle, \
            "causes.tsv" using (clip($2)):(inside($0) ? $0 + 0.06 : NaN):(clip($2 - $3)):(clip($2 + $3)) with xerrorbars pt 0 lc rgb "#d55e00" lw 1 notitle
    }
    unset label
    line = line + head + per_row * n + axis_lines
}
unset multiplot
set output
