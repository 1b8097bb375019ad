# peer.gp -- work against precision: what runs cost in instructions and how far they are off, the library's own steps beside CVODE's.
#
#     gnuplot -c plots/peer.gp build/peer.csv build/peer.svg
#
# `make bench-peer` draws it.

table = ARG1
cases = "normal-shift eight-hours weekend"
colours = "#1f5fa8 #b3261e #2b7a3d"

set terminal svg noenhanced size 900, 560 font "sans-serif,13" background "#ffffff"
set output ARG2
set datafile separator comma
set datafile missing nan

set title "Work against precision: tolerances 1e-4 to 1e-9 against explicit steps at 1e-12"
set xlabel "worst error of the bath's temperature, K"
set ylabel "instructions of a run, millions"
set logscale xy
set format x "%.0e"
set grid linecolor "#dddddd" linetype 1
set key outside bottom center horizontal

of(solver, i, x) = strcol(1) eq solver && strcol(2) eq word(cases, i) ? x : NaN

plot for [i = 1:3] table skip 1 using (of("ours", i, $8)):7 with linespoints pointtype 7 linecolor rgb word(colours, i) title word(cases, i), \
     for [i = 1:3] table skip 1 using (of("CVODE", i, $8)):7 with linespoints pointtype 6 dashtype 2 linecolor rgb word(colours, i) title word(cases, i)." by CVODE"
