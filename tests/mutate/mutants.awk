# mutants.awk -- every mutant of a C file, one a line: LINE COLUMN LENGTH TEXT, TEXT to stand in place of LENGTH characters.
# Comparisons, + - * /, and, or, constants a tenth larger (whole ones by one), conditions turned round. No comments, strings,
# includes, static assertions.

function mutant(column, length_, text) { print FNR, column, length_, text }

# Blanks in place of strings, characters and comments: columns stay.
function bare(line,  out, c, i, two) {
    out = ""
    for (i = 1; i <= length(line); i++) {
        c = substr(line, i, 1)
        two = substr(line, i, 2)
        if (comment) {
            if (two == "*/") { comment = 0; out = out " "; i++ }
            c = " "
        } else if (two == "/*") {
            comment = 1
            c = " "
        } else if (two == "//") {
            return out
        } else if (quote != "") {
            if (c == "\\") { i++; out = out " " } else if (c == quote) quote = ""
            c = " "
        } else if (c == "\"" || c == "'") {
            quote = c
            c = " "
        }
        out = out c
    }
    return out
}

function operators(line,  i, two, before, after) {
    for (i = 2; i < length(line); i++) {
        two = substr(line, i, 2)
        before = substr(line, i - 1, 1)
        after = substr(line, i + 2, 1)
        if (two in pairs) {
            if (before == " " && after == " ") mutant(i, 2, pairs[two])
            i++
        } else if (before == " " && substr(line, i + 1, 1) == " " && substr(line, i, 1) in singles) {
            mutant(i, 1, singles[substr(line, i, 1)])
            if (substr(line, i, 1) ~ /[<>]/) mutant(i, 1, substr(line, i, 1) "=")
        }
    }
}

function constants(line,  from, at, word, more) {
    from = 1
    while (match(substr(line, from), /[0-9][0-9]*\.?[0-9]*(e[-+]?[0-9]+)?/)) {
        at = from + RSTART - 1
        word = substr(line, at, RLENGTH)
        from = at + RLENGTH
        more = substr(line, from, 1)
        if (substr(line, at - 1, 1) ~ /[A-Za-z_.0-9]/ || more ~ /[A-Za-z_]/ || substr(line, at - 1, 1) == "[") continue
        mutant(at, length(word), word ~ /[.e]/ ? sprintf("%.15g", word * 1.1) (word * 1.1 == int(word * 1.1) ? ".0" : "") : word + 1)
    }
}

# A condition on one line is turned round.
function conditions(line,  at, deep, i, c) {
    at = match(line, /(if|while) \(/)
    if (at == 0) return
    at += index(substr(line, at), "(")
    for (i = at; i <= length(line); i++) {
        c = substr(line, i, 1)
        if (c == "(") deep++
        if (c == ")" && deep-- == 0) {
            mutant(at, i - at, "!(" substr(source, at, i - at) ")")
            return
        }
    }
}

BEGIN {
    pairs["<="] = "<"; pairs[">="] = ">"; pairs["=="] = "!="; pairs["!="] = "=="; pairs["&&"] = "||"; pairs["||"] = "&&"
    pairs["+="] = "-="; pairs["-="] = "+="
    singles["<"] = ">="; singles[">"] = "<="; singles["+"] = "-"; singles["-"] = "+"; singles["*"] = "/"; singles["/"] = "*"
}
{ source = $0; line = bare($0) }
line ~ /^ *#/ || line ~ /_Static_assert/ { next }
{ operators(line); constants(line); conditions(line) }
