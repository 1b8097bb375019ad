/* fuzz/mutate_table.h -- a run sheet or a log changed a little, as they come out of spreadsheets and instruments: numbers scaled, rows
   put in, repeated and taken out; rarely something absurd. */
#ifndef FUZZ_MUTATE_TABLE_H
#define FUZZ_MUTATE_TABLE_H

#include "fuzz/mutate.h"

/* clang-format off */
static const char *const mutate_tables[] = {
    "time,act\n0:01,\"load 42 lb, plate 1/4 in, for 3 min\"\n0:04:30,water 0.5 gal over 1 min\n0:06,liquid 2 gal over 1 min\n",
    "time;act\n0:05;lid on\n0:10;\"water 1 gal over 2 min, at 60 degF\"\n0:20;lid off\n",
    "time,temperature degF,still level in\n6:00,285.6,20.0\n6:02,285.6,\n6:04,283.9,\n6:10,281.2,20.4\n6:20,284.0,\n",
    "time_s,temperature_K\n0,413.7\n30,413.6\n60,413.5\n120,411\n240,412\n480,411\n",
    "# from the instrument\ntime_s,still_level_m,temperature_K,remark\n0,0.42,413.7,\n60,,413.1,quiet\n600,0.43,412.9,\n",
};
/* clang-format on */
static const char *const mutate_sheet_rows[] = {
    "0:02,salts 6 lb over 3 min\n",
    "0:12,\"load 20 kg, ball 10 mm, for 3 min\"\n",
    "0:15,heat off\n",
    "0:25,heat on\n",
    "0:30,stir for 1 min\n",
    "0:40,bail 2 gal over 1 min\n",
    "0:50,\n",
    "\n",
    "+30 s,water 0.2 gal over 10 s\n",
    "0:45,\"heat 60 %\"\n",
    "# a remark\n",
};
static const char *const mutate_log_rows[] = {"700,412.5\n",  "0,413\n",         "7:00,284.5,20.1\n",
                                              "7:05,,20.2\n", "800,0.44,412,\n", "\n"};

/* The first byte of a line, the head apart. */
static inline size_t mutate_row(const char *text, size_t size, uint32_t *state)
{
    size_t at = mutate_below(state, size + 1);
    while (at > 0 && text[at - 1] != '\n')
        at--;
    while (at < size && (at == 0 || text[at - 1] != '\n'))
        at++;
    return at;
}

static inline size_t mutate_repeat(char *text, size_t size, size_t line, size_t length)
{
    char row[200];
    length = length < sizeof row - 1 ? length : sizeof row - 1;
    memcpy(row, text + line, length);
    row[length] = '\0';
    return strlen(row) == length ? mutate_put(text, size, line, 0, row) : size;
}

static inline size_t mutate_table_once(char *text, size_t size, uint32_t *state)
{
    static const char *const absurd[] = {"\"", ",", ";", "\t", "\r", "nan", "-", "\xEF\xBB\xBF", "1e99", "'"};
    size_t line = mutate_row(text, size, state), length = 0, what = mutate_below(state, 40);
    bool sheet = size > 8 && memcmp(text + 5, "act", 3) == 0;
    while (line + length < size && text[line + length] != '\n')
        length++;
    length += line + length < size;
    if (what < 18)
        return mutate_number(text, size, state);
    if (what < 25 && sheet)
        return mutate_put(text, size, line, 0, MUTATE_ONE_OF(state, mutate_sheet_rows));
    if (what < 25)
        return mutate_put(text, size, size, 0, MUTATE_ONE_OF(state, mutate_log_rows));
    if (what < 31)
        return mutate_put(text, size, line, length, "");
    if (what < 36)
        return mutate_repeat(text, size, line, length);
    return mutate_put(text, size, mutate_below(state, size + 1), 0, MUTATE_ONE_OF(state, absurd));
}

static inline size_t mutate_table(char *text, size_t size, uint32_t seed)
{
    uint32_t state = seed != 0 ? seed : 1;
    if (size < 8 || mutate_below(&state, 3) == 0)
        size = mutate_put(text, size, 0, size, MUTATE_ONE_OF(&state, mutate_tables));
    for (size_t n = 1 + mutate_below(&state, 2); n > 0; n--)
        size = mutate_table_once(text, size, &state);
    return size;
}

#endif
