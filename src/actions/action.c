#include "actions/action.h"

#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "actions/misnomer.h"
#include "base/words.h"

action_amount action_amount_of(action_units u, unit_dimension d, double si)
{
    action_amount t;
    if (u == ACTION_BOTH)
        snprintf(t.text, sizeof t.text, "%s (%s)", format_quantity(UNITS_US, d, si).text,
                 format_quantity(UNITS_SI, d, si).text);
    else
        snprintf(t.text, sizeof t.text, "%s", format_quantity(u == ACTION_US ? UNITS_US : UNITS_SI, d, si).text);
    return t;
}

void action_text_add_boil(action_text *t, double start_s, bool was_quiet, double lost_s, double recovery_s)
{
    if (isnan(lost_s)) {
        TEXT_ADD(t->text, "The boil goes on");
        return;
    }
    if (was_quiet)
        TEXT_ADD(t->text, "Quiet already");
    else
        TEXT_ADD(t->text, "Boil stops at %s", format_clock(start_s, lost_s).text);
    if (isnan(recovery_s))
        TEXT_ADD(t->text, ", not back before the end");
    else
        TEXT_ADD(t->text, ", back after %s", format_duration(recovery_s).text);
}

bool action_clause_first(const cursor *part, const char *at, const char *words, bool said)
{
    if (said)
        cursor_error(part, at, "'%s' is said twice", words);
    return !said;
}

bool action_latest_read(const action_reader *r, cursor *part, const char *start, const char **later, double *s)
{
    if (!action_clause_first(part, start, "no later than", *later != NULL))
        return false;
    *later = start;
    return r->moment(r->moments, part, "no later than", s) && cursor_expect_end(part);
}

action_clause_end action_clause_read(cursor *part, const action_clause *clauses, size_t count, quantity *said, boil_action *a)
{
    const char *start = part->at;
    size_t i = 0;
    while (i < count && !cursor_take(part, clauses[i].words))
        i++;
    if (i == count)
        return ACTION_CLAUSE_UNKNOWN;
    const action_clause *k = &clauses[i];
    if (!action_clause_first(part, start, k->words, said[i].text != NULL))
        return ACTION_CLAUSE_WRONG;
    said[i].text = start;
    if (!quantity_read(part, k->words, UNIT_OF(k->dimension), &said[i]) || !cursor_expect_end(part) ||
        (k->within.unit != NULL && !quantity_within(part, k->words, &said[i], &k->within)))
        return ACTION_CLAUSE_WRONG;
    if (k->where > 0)
        memcpy((char *)a + k->where, &said[i].si, sizeof said[i].si);
    return ACTION_CLAUSE_READ;
}

/* The slot that a name's letters lead to: blanks and case do not count in it, nor in whether two are the same (FNV-1a). */
static size_t slot_of(const char *text, size_t length)
{
    uint32_t hash = 2166136261u;
    for (const char *at = text, *end = text + length; (at = words_skip(at, end)) < end; at++)
        hash = (hash ^ ((unsigned char)*at | ' ')) * 16777619u;
    return hash % LOAD_NAMES_SLOTS;
}

/* The slot of the first of the names that is the same, or a free one. */
static short *find_name(load_names *n, const char *text, size_t length)
{
    size_t slot = slot_of(text, length);
    while (n->numbers[slot] > 0 && !words_same(text, length, n->list[n->numbers[slot] - 1]))
        slot = (slot + 1) % LOAD_NAMES_SLOTS;
    return &n->numbers[slot];
}

int load_names_read(load_names *n, cursor *c)
{
    const char *start = words_skip(c->at, c->end);
    size_t length = (size_t)(words_trim(start, c->end) - start);
    short *number = find_name(n, start, length);
    c->at = c->end;
    if (*number > 0)
        return *number;
    char **list = boil_array_reserve(n->list, &n->capacity, n->count, sizeof *list);
    char *copy = list != NULL && n->count < LOAD_NAMES_MAX ? text_copy(start, length) : NULL;
    if (list != NULL)
        n->list = list;
    if (n->count >= LOAD_NAMES_MAX)
        cursor_error(c, start, "there are more than %d names of loads", LOAD_NAMES_MAX);
    else if (copy == NULL)
        messages_lost(c->messages);
    if (copy == NULL)
        return 0;
    list[n->count++] = copy;
    *number = (short)n->count;
    return *number;
}

const char *load_names_word(const load_names *n, int number)
{
    return number > 0 ? n->list[number - 1] : "";
}

void load_names_free(load_names *n)
{
    for (size_t i = 0; i < n->count; i++)
        free(n->list[i]);
    free(n->list);
    *n = (load_names){0};
}

static const action_type *const types[] = {
    [BOIL_ACTION_LOAD] = &action_load,     [BOIL_ACTION_LIFT] = &action_lift,     [BOIL_ACTION_WATER] = &action_water,
    [BOIL_ACTION_SALTS] = &action_salts,   [BOIL_ACTION_LIQUID] = &action_liquid, [BOIL_ACTION_HEAT] = &action_heat,
    [BOIL_ACTION_MIXER] = &action_mixer,   [BOIL_ACTION_LID] = &action_lid,       [BOIL_ACTION_EXHAUST] = &action_exhaust,
    [BOIL_ACTION_CRUST] = &action_crust,   [BOIL_ACTION_BAIL] = &action_bail,     [BOIL_ACTION_DRAIN] = &action_drain,
    [BOIL_ACTION_RETURN] = &action_return, [BOIL_ACTION_STIR] = &action_stir,
};

const char *const action_addition_words[] = {
    [BOIL_ACTION_WATER] = "water", [BOIL_ACTION_SALTS] = "salts", [BOIL_ACTION_LIQUID] = "liquid"};

#define TYPES (sizeof types / sizeof types[0])

const action_type *action_type_listed(size_t index)
{
    return index < TYPES ? types[index] : NULL;
}

const action_type *action_type_of(boil_action_kind kind)
{
    return types[kind];
}

double action_takes_s(const boil_action *a)
{
    size_t at = types[a->kind]->takes_at;
    double s = 0;
    if (at > 0)
        memcpy(&s, (const char *)a + at, sizeof s);
    return s;
}

const boil_load *action_load_of(const boil_action *a)
{
    return types[a->kind]->group == ACTION_LOAD ? &a->is.load : NULL;
}

/* "load, lift, ... and exhaust" */
static action_text known(void)
{
    action_text t = {""};
    for (size_t i = 0; i < TYPES; i++)
        TEXT_ADD(t.text, "%s%s", i == 0 ? "" : i + 1 < TYPES ? ", " : " and ", types[i]->keyword);
    return t;
}

static bool unknown(cursor *c)
{
    size_t token = cursor_token(c);
    words_nearest n = words_near(c->at, token);
    for (size_t i = 0; i < TYPES; i++)
        words_consider(&n, types[i]->keyword);
    words_consider(&n, "unload"); /* which is near to its opposite */
    size_t called;
    const char *answer = misnomer_answer(c, &called);
    if (answer != NULL)
        cursor_error(c, c->at, "no act is called '%s': %s", words_quoted(c->at, called).text, answer);
    else if (token == 0)
        cursor_error(c, c->at, "expected something to do: %s", known().text);
    else
        cursor_error(c, c->at, "unknown act '%s'; known are %s%s", words_quoted(c->at, token).text, known().text,
                     words_suggestion(&n).text);
    return false;
}

bool action_read(action_reader *r, cursor *c, boil_action *a, action_line *line)
{
    for (size_t i = 0; i < TYPES; i++)
        if (cursor_take(c, types[i]->keyword)) {
            a->kind = (boil_action_kind)i;
            return types[i]->parse(r, c, a, line);
        }
    return unknown(c);
}
