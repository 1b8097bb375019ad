# validate.gp -- every comparison of the model with a printed or measured value: deviation over the source's own band.
#
#     gnuplot -c plots/validate.gp build/validate.csv build/validate.svg
#
# `make validate` draws it. Between the two lines a row lies inside of its source's uncertainty; the axis is linear there and goes on
# by the logarithm.

table = ARG1
groups = "'water and steam' solution heats conduction convection evaporation swell mixing layer 'whole-bath rates' 'whole-bath times' 'trade facts'"

set terminal svg noenhanced size 900, 560 font "sans-serif,13" background "#ffffff"
set output ARG2
set datafile separator comma
set datafile missing NaN

far(x) = abs(x) <= 1 ? x : sgn(x) * (1 + log10(abs(x)))
spread(row) = 0.35 * (int(row * 7) % 11 - 5) / 5.0

set title "The model against printed and measured values: deviation over the source's own uncertainty"
set xlabel "ours less printed, over the band (1: at its edge); red: outside, with a stated reason"
set xrange [-3.5:3.5]
set yrange [words(groups) + 0.6:0.4]
set xtics ("-100" -3, "-10" -2, "-1" -1, "0" 0, "1" 1, "10" 2, "100" 3)
set grid ytics linecolor "#dddddd" linetype 1
set ytics ()
do for [i = 1:words(groups)] { set ytics add (word(groups, i) i) }
set arrow from -1, graph 0 to -1, graph 1 nohead linecolor "#2b7a3d" linewidth 2 back
set arrow from 1, graph 0 to 1, graph 1 nohead linecolor "#2b7a3d" linewidth 2 back
unset key

clipped(x) = x > 3.4 ? 3.4 : x < -3.4 ? -3.4 : x
in(i, x) = strcol(3) eq word(groups, i) && abs(x) <= 1 ? far(x) : NaN
out(i, x) = strcol(3) eq word(groups, i) && abs(x) > 1 ? clipped(far(x)) : NaN

plot for [i = 1:words(groups)] table skip 1 using (in(i, $13)):(i + spread($0)) with points pointtype 6 pointsize 0.6 linecolor "#1f5fa8", \
     for [i = 1:words(groups)] table skip 1 using (out(i, $13)):(i + spread($0)) with points pointtype 7 pointsize 0.7 linecolor "#b3261e"
