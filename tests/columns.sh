# columns.sh -- sourced by tests in tests/cli/program/columns: no line of a report is over 80 columns, whatever people name what they
# have. A character is a column, as a terminal of one alphabet shows it.

wide() { # text: its lines that are too long; bytes that continue a character of UTF-8 are no columns
    LC_ALL=C awk '{ text = $0; gsub(/[\200-\277]/, "", text) } length(text) > 80 { print length(text) " columns: " $0 }'
}

# What a command says on standard output: that it does, and well, and what of it is too long.
look() { # command and options
    boilback "$@" >said 2>complaints || { echo "$*: ended with $?" && cat complaints; }
    [ -s said ] || echo "$*: says nothing"
    wide <said >long
    [ ! -s long ] || { echo "$*:" && cat long; }
}
