/* fuzz/mutate_words.h -- quantities and command lines put together of what people write, and sometimes of what they do not. */
#ifndef FUZZ_MUTATE_WORDS_H
#define FUZZ_MUTATE_WORDS_H

#include "fuzz/mutate.h"

/* A byte or two of it become something else. */
static inline size_t mutate_spoil(char *text, size_t size, uint32_t *state)
{
    static const char *const bytes[] = {"",         "-",    " ", ".", ",", "/", ":", "e9", "0",           "%",
                                        "\xC2\xB0", "\xFF", "+", "'", "x", "1", "=", "\t", "\xE2\x80\xAE"};
    size_t at = mutate_below(state, size + 1), gone = at < size ? mutate_below(state, 2) : 0;
    return mutate_put(text, size, at, gone, MUTATE_ONE_OF(state, bytes));
}

static inline size_t mutate_quantity(char *text, size_t size, uint32_t seed)
{
    static const char *const numbers[] = {"1",   "2.5",   "1/4", "1 1/2", "60",      "0",      "-3.5",  "285", "1000",
                                          "1e3", "0.001", ".5",  "12:30", "6:05:10", "4 to 1", "99999", "3/0"};
    static const char *const units[] = {
        "in",   "degF", "gal",  "%",      "lb",  "kW",  "kBtu/h", "min",   "psig",  "gal/min", "L/h",
        "mm",   "K",    "degC", "oz/gal", "g/L", "ft2", "W/m2K",  "mL/m2", "kg",    "h",       "lb per 2 gal",
        "mbar", "fpm",  "s",    "m/s",    "",    "kJ",  "wt%",    "F",     "therm", "ksi",     "furlong"};
    uint32_t state = seed != 0 ? seed : 1;
    if (size > 0 && size < 200 && mutate_below(&state, 3) == 0)
        return mutate_spoil(text, size, &state);
    size = mutate_put(text, size, 0, size, MUTATE_ONE_OF(&state, numbers));
    size = mutate_put(text, size, size, 0, mutate_below(&state, 4) == 0 ? "" : " ");
    return mutate_put(text, size, size, 0, MUTATE_ONE_OF(&state, units));
}

/* Words between zero bytes; '|' stands for one here. */
static inline size_t mutate_add_words(char *text, size_t size, const char *words)
{
    size_t from = size;
    size = mutate_put(text, size, size, 0, words);
    for (; from < size; from++)
        text[from] = text[from] == '|' ? '\0' : text[from];
    return size;
}

/* By command. */
static inline size_t mutate_options(char *text, size_t size, uint32_t seed)
{
    static const char *const lines[][7] = {
        {"--of|sudden|", "--step|10 s|", "--strict|", "--full|", "--tolerance|1e-6|", "--html=x.html|", "a.bath|"},
        {"--json|", "--units|si|", "--units=us|", "--json|", "--units|si|", "--help|", "a.bath|"},
        {"--liquid|", "--liquid-strength|50 %|", "--from|4 in|", "--from-strength|10 %|", "--salts-first|", "--json|",
         "a.bath|"},
        {"--reads|284 degF|", "--reads=284degF +- 2degF|", "--level|15 in|", "--boiling-level|1 ft|", "--json|", "--csv|-|",
         "a.bath|"},
        {"--recover|4 min|", "--load|40 lb|", "--table|", "--interval|", "--heaviest|", "--positions|3|", "a.bath|"},
        {"--full|", "--json|", "--plot|x.svg|", "--units|si|", "--csv=x.csv|", "b.bath|", "a.bath|"},
        {"--grid|4|", "--samples|64|", "--seed|7|", "--threads|2|", "--shard|1/4|", "--csv|x.csv|", "a.bath|"},
        {"--thermometer|1 degF|", "--dipstick|1/4 in|", "--json|", "--csv|x|", "--units|si|", "l.csv|", "a.bath|"},
        {"--table|", "--down|tank level = 14 in to 22 in : 2|", "--across|room draught = 0.1 m/s to 0.3 m/s : 2|",
         "--same-volume|", "--sheet|", "--csv|-|", "a.bath|"},
        {"--write|x.bath|", "--seed|7|", "--threads=2|", "--csv|-|", "--html|x.html|", "--full|", "a.bath|"},
        {"--html|x.html|", "--all|x|", "--json|", "--units|si|", "--sheet-anywhere|", "b.bath|", "a.bath|"},
        {"--script|-|", "--lines|", "--speed|10x|", "--save|x.bath|", "--units=us|", "--lessons|", "a.bath|"},
        {"--salts|100 % NaOH|", "--salt-fraction|50 %|", "--strength|6 lb/gal|", "--temperature|200 degF|",
         "--altitude|500 ft|", "--table|", "--pressure|1 bar|"},
    };
    uint32_t state = seed != 0 ? seed : 1;
    if (size > 0 && size < 500 && mutate_below(&state, 3) == 0)
        return mutate_spoil(text, size, &state);
    size_t of = mutate_below(&state, sizeof lines / sizeof lines[0]);
    size = 0;
    for (size_t n = mutate_below(&state, 4); n > 0; n--)
        size = mutate_add_words(text, size, MUTATE_ONE_OF(&state, lines[mutate_below(&state, 12) == 0 ? 0 : of]));
    return mutate_add_words(text, size, lines[of][6]);
}

#endif
