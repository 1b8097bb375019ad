#include "habits/table.h"

#include <string.h>

#include "base/words.h"

/* What must stand behind it. */
typedef enum { ANYTHING, NUMBER } follower;

typedef struct {
    follower before;
    const char *typed, *read;
} habit;

/* By where they may stand. Where one begins like another, the longer one stands first. */
/* clang-format off */
static const habit whens[] = {
    {NUMBER, "at", ""},
    {ANYTHING, "every half an hour", "every 30 min"},
    {ANYTHING, "every half hour", "every 30 min"},
    {ANYTHING, "every quarter of an hour", "every 15 min"},
    {ANYTHING, "every quarter hour", "every 15 min"},
    {ANYTHING, "every hour", "every 1 h"},
};

static const habit acts[] = {
    {ANYTHING, "unload", "lift"},
    {ANYTHING, "take out", "lift"},
    {ANYTHING, "pull", "lift"},
    {ANYTHING, "light the burner", "heat on"},
    {ANYTHING, "light burner", "heat on"},
    {ANYTHING, "turn on the burner", "heat on"},
    {ANYTHING, "turn off the burner", "heat off"},
    {ANYTHING, "burner back on", "heat on"},
    {ANYTHING, "burner fails", "heat off"},
    {ANYTHING, "burner", "heat"},
    {ANYTHING, "flame out", "heat off"},
    {ANYTHING, "gas off", "heat off"},
    {ANYTHING, "gas on", "heat on"},
    {ANYTHING, "break the crust", "crust broken"},
    {ANYTHING, "break crust", "crust broken"},
    {ANYTHING, "skim off", "bail"},
    {ANYTHING, "skim", "bail"},
    {ANYTHING, "salt", "salts"},
};

static const habit loads[] = {
    {NUMBER, "bolt", "bar"},
    {NUMBER, "bolts", "bar"},
    {NUMBER, "rod", "bar"},
    {NUMBER, "rods", "bar"},
    {NUMBER, "pin", "bar"},
    {NUMBER, "pins", "bar"},
    {NUMBER, "screw", "bar"},
    {NUMBER, "screws", "bar"},
    {NUMBER, "shaft", "bar"},
    {NUMBER, "shafts", "bar"},
    {NUMBER, "stud", "bar"},
    {NUMBER, "studs", "bar"},
    {NUMBER, "bars", "bar"},
    {NUMBER, "sheet", "plate"},
    {NUMBER, "strip", "plate"},
    {NUMBER, "flat", "plate"},
    {NUMBER, "plates", "plate"},
    {NUMBER, "pipe", "tube"},
    {NUMBER, "pipes", "tube"},
    {NUMBER, "tubes", "tube"},
    {NUMBER, "balls", "ball"},
};

static const habit pours[] = {
    {NUMBER, "in", "over"},
};

static const habit poured[] = {
    {ANYTHING, "caustic soda", "NaOH"},
    {ANYTHING, "lye", "NaOH"},
    {ANYTHING, "lb per gal", "lb/gal"},
    {ANYTHING, "oz per gal", "oz/gal"},
    {ANYTHING, "gal per min", "gal/min"},
    {ANYTHING, "gal per hour", "gal/h"},
    {ANYTHING, "lb per hour", "lb/h"},
};

static const habit values[] = {
    {ANYTHING, "natural gas", "gas"},
};

#define ALL_OF(list) list, sizeof list / sizeof list[0]

static const struct {
    unsigned where;
    const habit *list;
    size_t count;
} places[] = {
    {HABIT_WHEN, ALL_OF(whens)},
    {HABIT_ACT, ALL_OF(acts)},
    {HABIT_LOAD, ALL_OF(loads)},
    {HABIT_POUR, ALL_OF(pours)},
    {HABIT_POUR | HABIT_VALUE, ALL_OF(poured)},
    {HABIT_VALUE, ALL_OF(values)},
};

#define PLACES (sizeof places / sizeof places[0])

static const struct {
    const char *typed, *read;
    bool whole; /* the word ends with it */
} marks[] = {
    {"\"", " in", false}, {"\u2033", " in", false}, {"\u201d", " in", false}, {"'", " ft", false},
    {"\u2032", " ft", false}, {"\u2019", " ft", false}, {"F", " degF", true}, {"C", " degC", true},
};
/* clang-format on */

#define MARKS (sizeof marks / sizeof marks[0])

bool habit_listed(size_t index, const char **typed, const char **read, unsigned *where)
{
    size_t p = 0;
    for (; p < PLACES && index >= places[p].count; p++)
        index -= places[p].count;
    if (p == PLACES)
        return false;
    *typed = places[p].list[index].typed;
    *read = places[p].list[index].read;
    *where = places[p].where;
    return true;
}

/* The bytes that a word of habit takes there, with what must stand behind it; 0: it does not stand there. */
static size_t taken_at(const reword *w, size_t at, const habit *h)
{
    const char *start = w->text + at, *end = w->text + w->length;
    size_t taken = words_taken(start, end, h->typed);
    if (taken == 0 || (h->before == NUMBER && !reword_number_at(w, at + taken)))
        return 0;
    return h->read[0] != '\0' ? taken : (size_t)(words_skip(start + taken, end) - start); /* and the blank behind it */
}

/* All of them begin with a small letter, which decides for nearly all. */
static bool replace_one(reword *w, size_t at, const habit *list, size_t count)
{
    char first = (char)(w->text[at] | ' ');
    for (size_t i = 0; i < count; i++) {
        size_t taken = list[i].typed[0] == first ? taken_at(w, at, &list[i]) : 0;
        if (taken > 0) {
            reword_replace(w, at, taken, list[i].read);
            return true;
        }
    }
    return false;
}

bool habit_replace(reword *w, size_t at, unsigned place)
{
    bool replaced = false;
    for (size_t p = 0; p < PLACES && !replaced && words_letter(w->text[at]); p++)
        replaced = (places[p].where & place) != 0 && replace_one(w, at, places[p].list, places[p].count);
    return replaced;
}

/* By its first byte: one of the signs beyond ASCII begins as all of them do. */
static bool may_be_mark(char c)
{
    return c == '"' || c == '\'' || (c | ' ') == 'f' || (c | ' ') == 'c' || c == "\u2033"[0];
}

/* The mark at a place behind a digit and blanks; its row, or the number of rows. */
static size_t mark_at(const reword *w, size_t at)
{
    size_t i = may_be_mark(w->text[at]) ? 0 : MARKS;
    const char *end = w->text + w->length;
    for (; i < MARKS; i++) {
        size_t length = strlen(marks[i].typed);
        if (marks[i].whole ? words_taken(w->text + at, end, marks[i].typed) > 0
                           : strncmp(w->text + at, marks[i].typed, length) == 0)
            break;
    }
    return i;
}

/* Whether a digit is the last of a number; that of "ft2" is of none. */
static bool ends_number(const reword *w, size_t at)
{
    while (at > 0 && strchr("0123456789./", w->text[at]) != NULL)
        at--;
    return strchr("0123456789 \t,=|+-", w->text[at]) != NULL;
}

size_t habit_replace_marks(reword *w, size_t at, size_t end)
{
    for (; at < end; at++) {
        if (w->text[at] < '0' || w->text[at] > '9')
            continue;
        size_t mark = (size_t)(words_skip(w->text + at + 1, w->text + w->length) - w->text), i = mark_at(w, mark);
        if (mark >= end || i == MARKS || !ends_number(w, at))
            continue;
        size_t before = w->length;
        reword_replace(w, at + 1, mark - at - 1 + strlen(marks[i].typed), marks[i].read);
        end = end + w->length - before;
        at += strlen(marks[i].read);
        if (at + 1 < w->length && w->text[at + 1] >= '0' && w->text[at + 1] <= '9') { /* 6'3" */
            reword_replace(w, at + 1, 0, " ");
            end++;
        }
    }
    return end;
}
