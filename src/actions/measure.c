#include "actions/measure.h"

#include <string.h>

#include "base/words.h"

static const bounds one_volume = {"L", 0.001, 10000}, one_mass = {"kg", 0.001, 10000};

/* Words that may stand behind an amount. */
static const char *const taken[] = {"over", "at", "in", "of", "one", "every", "until", "from", "to", "x", "pieces", NULL};

/* What people count in. */
static const char *const common[] = {"bag",   "sack",   "bucket", "pail", "drum",     "can",      "jug",  "jar",
                                     "scoop", "shovel", "ladle",  "cup",  "canister", "jerrycan", "dose", NULL};

static bool is_among(const char *text, size_t length, const char *const *words)
{
    while (*words != NULL && !words_same(text, length, *words))
        words++;
    return *words != NULL;
}

static bool may_be_measure(const cursor *c, const char *text, size_t length)
{
    size_t used;
    if (length == 0 || length >= sizeof((own_measure *)NULL)->word ||
        cursor_token(&(cursor){.at = text, .end = text + length}) < length)
        return cursor_error(c, text, "a measure is one word of at most %zu letters, for example 'bag = 50 lb'",
                            sizeof((own_measure *)NULL)->word - 1);
    for (unsigned d = 0; d < DIM_COUNT; d++)
        if (unit_scan(UNIT_OF(d), text, length, &used) != NULL && used == length)
            return cursor_error(c, text, "'%s' is a unit already", words_quoted(text, length).text);
    if (is_among(text, length, taken) || (text[0] >= '0' && text[0] <= '9'))
        return cursor_error(c, text, "'%s' means something else in a schedule: take another word",
                            words_quoted(text, length).text);
    return true;
}

static const own_measure *find(const measure_list *all, const char *text, size_t length)
{
    for (size_t i = 0; i < all->count; i++)
        if (words_same(text, length, all->list[i].word))
            return &all->list[i];
    return NULL;
}

bool measure_read(cursor *c, measure_list *all)
{
    quantity q;
    cursor_done(c);
    const char *word = c->at, *equals = memchr(c->at, '=', (size_t)(c->end - c->at));
    if (equals == NULL)
        return cursor_error(c, c->at, "expected a measure, for example 'bag = 50 lb'");
    size_t length = (size_t)(words_trim(word, equals) - word);
    if (!may_be_measure(c, word, length))
        return false;
    if (find(all, word, length) != NULL)
        return cursor_error(c, word, "'%s' is said twice", words_quoted(word, length).text);
    if (all->count == MEASURES_MAX)
        return cursor_error(c, word, "there are more than %d measures", MEASURES_MAX);
    c->at = equals + 1;
    own_measure *m = &all->list[all->count];
    snprintf(m->word, sizeof m->word, "%.*s", (int)length, word);
    if (!quantity_read(c, m->word, UNIT_OF(DIM_VOLUME) | UNIT_OF(DIM_MASS), &q) || !cursor_expect_end(c) ||
        !quantity_within(c, m->word, &q, q.dimension == DIM_VOLUME ? &one_volume : &one_mass))
        return false;
    m->si = q.si;
    m->dimension = q.dimension;
    all->count++;
    return true;
}

/* The word at the cursor, which may have the "s" of many. */
static const own_measure *named(const measure_list *all, const char *text, size_t length)
{
    const own_measure *m = find(all, text, length);
    return m == NULL && length > 1 && (text[length - 1] | ' ') == 's' ? find(all, text, length - 1) : m;
}

/* Passes a number; false where none stands. */
static bool pass_number(cursor *c, double *number)
{
    cursor ahead = *c;
    ahead.messages = NULL;
    bool good = quantity_number(&ahead, "amount", number);
    if (good)
        c->at = ahead.at;
    return good;
}

/* False, with a message, where what stands behind a number is commonly a measure, which is not said to be one here. */
static bool is_known(const cursor *behind, size_t length, unsigned dimensions)
{
    size_t plain = length;
    if (length > 1 && (behind->at[length - 1] | ' ') == 's' && !is_among(behind->at, length, common))
        plain--;
    if (!is_among(behind->at, plain, common))
        return true;
    words_quote word = words_quoted(behind->at, plain);
    return cursor_error(behind, behind->at, "'%s' is no measure yet: add '[measures]' with '%s = %s'", word.text, word.text,
                        (dimensions & UNIT_OF(DIM_VOLUME)) != 0 ? "5 gal" : "50 lb");
}

bool measure_amount(cursor *c, const measure_list *all, const char *act, unsigned dimensions, quantity *q,
                    const own_measure **counted, double *number)
{
    cursor_done(c);
    const char *start = c->at;
    cursor behind = *c;
    bool numbered = pass_number(&behind, number);
    size_t length = cursor_token(&behind);
    *counted = numbered && length > 0 ? named(all, behind.at, length) : NULL;
    if (*counted == NULL)
        return (!numbered || is_known(&behind, length, dimensions)) && quantity_read(c, act, dimensions, q);
    c->at = behind.at + length;
    *q = (quantity){*number * (*counted)->si, (*counted)->dimension, NULL, start, (size_t)(c->at - start)};
    if ((UNIT_OF((*counted)->dimension) & dimensions) != 0)
        return true;
    const char *word = (*counted)->word;
    return (*counted)->dimension == DIM_VOLUME ? cursor_error(c, start, "a '%s' is a volume, but '%s' is weighed", word, act)
                                               : cursor_error(c, start, "a '%s' is weighed, but '%s' is a volume", word, act);
}
