/* fuzz/mutate.h -- a scenario changed a little, as a person might have written it: numbers scaled, acts put in, repeated and taken
   out; rarely something absurd. So that most of what comes of it still is a scenario, and the deep path is walked. */
#ifndef FUZZ_MUTATE_H
#define FUZZ_MUTATE_H

#include <ctype.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define MUTATE_MAX ((size_t)8000)

static const char mutate_seed[] =
    "duration = 10 min\n[tank]\nlength = 5 ft\nwidth = 2 ft\ndepth = 24.5 in\nlevel = 16 in\ninsulation = 2 in\n[bath]\n"
    "salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2\nboiling point = 285 degF\n[heat]\nsource = gas\ninput = 190 kBtu/h\n"
    "efficiency = 60 %\nlag = 60 s\n[room]\ntemperature = 75 degF\n[schedule]\n"
    "0:02 load 42 lb, plate 1/4 in, at 70 degF, for 5 min, basket 7 lb\n0:03 water 1 gal over 1 min, at 60 degF\n";

static const char *const mutate_acts[] = {"0:04 salts 6 lb over 3 min\n",
                                          "0:05 liquid 4 gal over 2 min\n",
                                          "0:01 lid on\n",
                                          "0:06 lid off\n",
                                          "0:02 heat 60 %\n",
                                          "0:07 heat off\n",
                                          "0:08 heat on\n",
                                          "0:03 exhaust off\n",
                                          "every 2 min water 0.2 gal over 1 min\n",
                                          "0:05 bail 2 gal over 1 min\n",
                                          "0:06 stir for 1 min\n",
                                          "0:01 water 2 gal over 30 s\n",
                                          "0:02 load 20 kg, ball 10 mm, for 3 min\n",
                                          "0:04 load 30 lb, bar 1 in, at 40 degC, for 2 min\n"};

/* A generator of its own: what was found is found again [xorshift, Marsaglia 2003]. */
static inline uint32_t mutate_next(uint32_t *state)
{
    *state ^= *state << 13;
    *state ^= *state >> 17;
    *state ^= *state << 5;
    return *state;
}

static inline size_t mutate_below(uint32_t *state, size_t n)
{
    return n > 0 ? mutate_next(state) % n : 0;
}

#define MUTATE_ONE_OF(state, list) (list)[mutate_below(state, sizeof(list) / sizeof(list)[0])]

/* Puts `with` in place of some bytes, where there is room. */
static inline size_t mutate_put(char *text, size_t size, size_t at, size_t length, const char *with)
{
    size_t n = strlen(with);
    if (size - length + n > MUTATE_MAX)
        return size;
    memmove(text + at + n, text + at + length, size - at - length);
    memcpy(text + at, with, n);
    return size - length + n;
}

/* The start of a line of the schedule, or its end. */
static inline size_t mutate_line(const char *text, size_t size, uint32_t *state)
{
    static const char head[] = "[schedule]\n";
    size_t first = 0;
    while (first + sizeof head - 1 < size && memcmp(text + first, head, sizeof head - 1) != 0)
        first++;
    first = first + sizeof head - 1 < size ? first + sizeof head - 1 : 0;
    size_t at = first + mutate_below(state, size - first);
    while (at > first && text[at - 1] != '\n')
        at--;
    return at;
}

static inline size_t mutate_number(char *text, size_t size, uint32_t *state)
{
    char number[40], with[40];
    size_t at = mutate_below(state, size), n = 0;
    while (at < size && !isdigit((unsigned char)text[at]))
        at++;
    while (at > 0 && (isdigit((unsigned char)text[at - 1]) || text[at - 1] == '.'))
        at--;
    while (at + n < size && n < sizeof number - 1 && (isdigit((unsigned char)text[at + n]) || text[at + n] == '.'))
        n++;
    if (n == 0)
        return size;
    memcpy(number, text + at, n);
    number[n] = '\0';
    double x = strtod(number, NULL), by = 0.8 + 0.4 * (double)mutate_below(state, 1001) / 1000;
    bool clock = (at > 0 && text[at - 1] == ':') || (at + n < size && text[at + n] == ':');
    if (clock)
        snprintf(with, sizeof with, "%02u", (unsigned)mutate_below(state, 10));
    else
        snprintf(with, sizeof with, "%.5g", mutate_below(state, 50) == 0 ? x * 1000 : x * by);
    return mutate_put(text, size, at, n, with);
}

/* Up to MUTATE_MAX bytes; returns how many there are now. */
static inline size_t mutate(char *text, size_t size, uint32_t seed)
{
    uint32_t state = seed != 0 ? seed : 1;
    if (size < 40 || mutate_below(&state, 4) == 0)
        size = mutate_put(text, size, 0, size, mutate_seed);
    for (size_t n = 1 + mutate_below(&state, 2); n > 0; n--) {
        size_t line = mutate_line(text, size, &state), what = mutate_below(&state, 40), length = 0;
        while (line + length < size && text[line + length] != '\n')
            length++;
        if (what < 28)
            size = mutate_number(text, size, &state);
        else if (what < 35)
            size = mutate_put(text, size, line, 0, MUTATE_ONE_OF(&state, mutate_acts));
        else if (what < 39)
            size = mutate_put(text, size, line, line + length < size ? length + 1 : length, "");
        else
            size = mutate_put(text, size, mutate_below(&state, size), 1, mutate_below(&state, 2) == 0 ? "-" : ",");
    }
    return size;
}

#endif
