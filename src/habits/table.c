#include "habits/table.h"

#include <string.h>

#include "base/words.h"

/* What must stand behind it. */
typedef enum { ANYTHING, NUMBER } follower;

/* Where one begins like another, the longer one stands first. */
/* clang-format off */
static const struct {
    unsigned where;
    follower before;
    const char *typed, *read;
} table[] = {
    {HABIT_WHEN, NUMBER, "at", ""},
    {HABIT_WHEN, ANYTHING, "every half an hour", "every 30 min"},
    {HABIT_WHEN, ANYTHING, "every half hour", "every 30 min"},
    {HABIT_WHEN, ANYTHING, "every quarter of an hour", "every 15 min"},
    {HABIT_WHEN, ANYTHING, "every quarter hour", "every 15 min"},
    {HABIT_WHEN, ANYTHING, "every hour", "every 1 h"},

    {HABIT_ACT, ANYTHING, "unload", "lift"},
    {HABIT_ACT, ANYTHING, "take out", "lift"},
    {HABIT_ACT, ANYTHING, "pull", "lift"},
    {HABIT_ACT, ANYTHING, "light the burner", "heat on"},
    {HABIT_ACT, ANYTHING, "light burner", "heat on"},
    {HABIT_ACT, ANYTHING, "turn on the burner", "heat on"},
    {HABIT_ACT, ANYTHING, "turn off the burner", "heat off"},
    {HABIT_ACT, ANYTHING, "burner back on", "heat on"},
    {HABIT_ACT, ANYTHING, "burner fails", "heat off"},
    {HABIT_ACT, ANYTHING, "burner", "heat"},
    {HABIT_ACT, ANYTHING, "flame out", "heat off"},
    {HABIT_ACT, ANYTHING, "gas off", "heat off"},
    {HABIT_ACT, ANYTHING, "gas on", "heat on"},
    {HABIT_ACT, ANYTHING, "break the crust", "crust broken"},
    {HABIT_ACT, ANYTHING, "break crust", "crust broken"},
    {HABIT_ACT, ANYTHING, "skim off", "bail"},
    {HABIT_ACT, ANYTHING, "skim", "bail"},
    {HABIT_ACT, ANYTHING, "salt", "salts"},

    {HABIT_LOAD, NUMBER, "bolt", "bar"},
    {HABIT_LOAD, NUMBER, "bolts", "bar"},
    {HABIT_LOAD, NUMBER, "rod", "bar"},
    {HABIT_LOAD, NUMBER, "rods", "bar"},
    {HABIT_LOAD, NUMBER, "pin", "bar"},
    {HABIT_LOAD, NUMBER, "pins", "bar"},
    {HABIT_LOAD, NUMBER, "screw", "bar"},
    {HABIT_LOAD, NUMBER, "screws", "bar"},
    {HABIT_LOAD, NUMBER, "shaft", "bar"},
    {HABIT_LOAD, NUMBER, "shafts", "bar"},
    {HABIT_LOAD, NUMBER, "stud", "bar"},
    {HABIT_LOAD, NUMBER, "studs", "bar"},
    {HABIT_LOAD, NUMBER, "bars", "bar"},
    {HABIT_LOAD, NUMBER, "sheet", "plate"},
    {HABIT_LOAD, NUMBER, "strip", "plate"},
    {HABIT_LOAD, NUMBER, "flat", "plate"},
    {HABIT_LOAD, NUMBER, "plates", "plate"},
    {HABIT_LOAD, NUMBER, "pipe", "tube"},
    {HABIT_LOAD, NUMBER, "pipes", "tube"},
    {HABIT_LOAD, NUMBER, "tubes", "tube"},
    {HABIT_LOAD, NUMBER, "balls", "ball"},

    {HABIT_POUR, NUMBER, "in", "over"},
    {HABIT_POUR | HABIT_VALUE, ANYTHING, "caustic soda", "NaOH"},
    {HABIT_POUR | HABIT_VALUE, ANYTHING, "lye", "NaOH"},
    {HABIT_POUR | HABIT_VALUE, ANYTHING, "lb per gal", "lb/gal"},
    {HABIT_POUR | HABIT_VALUE, ANYTHING, "oz per gal", "oz/gal"},
    {HABIT_POUR | HABIT_VALUE, ANYTHING, "gal per min", "gal/min"},
    {HABIT_POUR | HABIT_VALUE, ANYTHING, "gal per hour", "gal/h"},
    {HABIT_POUR | HABIT_VALUE, ANYTHING, "lb per hour", "lb/h"},
    {HABIT_VALUE, ANYTHING, "natural gas", "gas"},
};

static const struct {
    const char *typed, *read;
    bool whole; /* the word ends with it */
} marks[] = {
    {"\"", " in", false}, {"\u2033", " in", false}, {"\u201d", " in", false}, {"'", " ft", false},
    {"\u2032", " ft", false}, {"\u2019", " ft", false}, {"F", " degF", true}, {"C", " degC", true},
};
/* clang-format on */

bool habit_listed(size_t index, const char **typed, const char **read, unsigned *where)
{
    if (index >= sizeof table / sizeof table[0])
        return false;
    *typed = table[index].typed;
    *read = table[index].read;
    *where = table[index].where;
    return true;
}

/* Whether in small letters or large; some signs count as alike, too, and are told apart by the whole. */
static bool begins_alike(char a, char b)
{
    return (((unsigned char)a ^ (unsigned char)b) & ~0x20u) == 0;
}

/* All of them begin with a letter, and half of what stands in a line does not. */
static bool may_begin(char c)
{
    return (c | ' ') >= 'a' && (c | ' ') <= 'z';
}

bool habit_replace(reword *w, size_t at, unsigned place)
{
    if (!may_begin(w->text[at]))
        return false;
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        if (!begins_alike(w->text[at], table[i].typed[0]))
            continue;
        size_t taken = (table[i].where & place) != 0 ? reword_taken(w, at, table[i].typed) : 0;
        if (taken == 0 || (table[i].before == NUMBER && !reword_number_at(w, at + taken)))
            continue;
        if (table[i].read[0] == '\0') /* and the blank behind it */
            taken = (size_t)(words_skip(w->text + at + taken, w->text + w->length) - (w->text + at));
        reword_replace(w, at, taken, table[i].read);
        return true;
    }
    return false;
}

/* The mark at a place behind a digit and blanks; its row, or the number of rows. */
static size_t mark_at(const reword *w, size_t at)
{
    size_t i = 0;
    const char *end = w->text + w->length;
    for (; i < sizeof marks / sizeof marks[0]; i++) {
        size_t length = strlen(marks[i].typed);
        if (marks[i].whole ? words_taken(w->text + at, end, marks[i].typed) > 0
                           : strncmp(w->text + at, marks[i].typed, length) == 0)
            break;
    }
    return i;
}

/* The last digit of a number; that of "ft2" is none. */
static bool ends_number(const reword *w, size_t at)
{
    if (w->text[at] < '0' || w->text[at] > '9')
        return false;
    while (at > 0 && strchr("0123456789./", w->text[at]) != NULL)
        at--;
    return strchr("0123456789 \t,=|+-", w->text[at]) != NULL;
}

size_t habit_replace_marks(reword *w, size_t at, size_t end)
{
    for (; at < end; at++) {
        if (!ends_number(w, at))
            continue;
        size_t mark = (size_t)(words_skip(w->text + at + 1, w->text + w->length) - w->text), i = mark_at(w, mark);
        if (mark >= end || i == sizeof marks / sizeof marks[0])
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
