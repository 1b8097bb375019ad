#include "reading/quantity.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/words.h"

#define NUMBER_MAX 60 /* characters */

static size_t digits(const char *at, const char *end)
{
    size_t n = 0;
    while (at + n < end && at[n] >= '0' && at[n] <= '9')
        n++;
    return n;
}

static bool sign_at(const char *at, const char *end, char sign)
{
    return at < end && *at == sign;
}

/* [ "-" ] digits [ "." digits ] [ "e" [ "-" | "+" ] digits ]: its length, 0 when there is none. */
static size_t number_length(const char *start, const char *end)
{
    const char *at = start + sign_at(start, end, '-');
    size_t n = digits(at, end);
    if (n == 0)
        return 0;
    at += n;
    if (sign_at(at, end, '.') && (n = digits(at + 1, end)) > 0)
        at += 1 + n;
    if (sign_at(at, end, 'e')) {
        const char *power = at + 1;
        power += sign_at(power, end, '-') || sign_at(power, end, '+');
        n = digits(power, end);
        if (n > 0)
            at = power + n;
    }
    return (size_t)(at - start);
}

/* Digits with a point or none, so few that they and the power of ten are exact and their quotient is what strtod gives: nearly all
   there are. False: others. */
static bool short_value(const char *at, size_t length, double *value)
{
    double whole = 0, divisor = 0;
    if (length > 15)
        return false;
    for (size_t i = 0; i < length; i++) {
        if (at[i] == '.') {
            divisor = 1;
            continue;
        }
        if (at[i] < '0' || at[i] > '9')
            return false;
        whole = 10 * whole + (at[i] - '0');
        divisor *= 10;
    }
    *value = divisor > 0 ? whole / divisor : whole;
    return true;
}

/* The value of checked characters, so that strtod meets neither hex nor inf. NaN when there are too many. */
static double value_of(const char *at, size_t length)
{
    char copy[NUMBER_MAX + 1];
    double value;
    if (short_value(at, length, &value))
        return value;
    if (length > NUMBER_MAX)
        return (double)NAN;
    memcpy(copy, at, length);
    copy[length] = '\0';
    return strtod(copy, NULL);
}

/* digits "/" digits at the cursor: its length, 0 when there is none. */
static size_t fraction_length(const char *at, const char *end, double *value)
{
    size_t over = digits(at, end);
    if (over == 0 || !sign_at(at + over, end, '/'))
        return 0;
    size_t under = digits(at + over + 1, end);
    if (under == 0)
        return 0;
    *value = value_of(at, over) / value_of(at + over + 1, under);
    return over + 1 + under;
}

/* 1/4 and 1 1/4: its length, 0 when there is none. */
static size_t mixed_length(const char *at, const char *end, double *value)
{
    size_t whole = digits(at, end);
    const char *rest = words_skip(at + whole, end);
    if (whole == 0 || rest == at + whole)
        return fraction_length(at, end, value);
    size_t part = fraction_length(rest, end, value);
    if (part == 0)
        return 0;
    *value += value_of(at, whole);
    return (size_t)(rest - at) + part;
}

/* A comma in a number, which starts at `start`: three digits behind it are thousands to some, a fraction to others. */
static bool comma(const cursor *c, const char *what, const char *start)
{
    const char *rest = c->at + 1;
    size_t whole = (size_t)(c->at - start), n = digits(rest, c->end);
    words_quote q = words_quoted(start, whole + 1 + n);
    if (n == 3)
        return cursor_error(c, c->at, "'%s' has a comma: for '%s' write %.*s%.*s, or %.*s.%.*s if thousandths are meant",
                            q.text, what, (int)whole, start, (int)n, rest, (int)whole, start, (int)n, rest);
    return cursor_error(c, c->at, "'%s' has a decimal comma: for '%s' write %.*s.%.*s", q.text, what, (int)whole, start, (int)n,
                        rest);
}

/* Common slips behind a number, each with its remedy. */
static bool number_ends(const cursor *c, const char *what, const char *start)
{
    if (sign_at(c->at, c->end, ',') && digits(c->at + 1, c->end) > 0)
        return comma(c, what, start);
    if (sign_at(c->at, c->end, ':') && digits(c->at + 1, c->end) > 0)
        return cursor_error(
            c, start, "a clock such as 1:30 says only when; '%s' needs a quantity with its unit, for example 90 min", what);
    return true;
}

static bool number_begins(cursor *c, const char *what, const char *example, double *value)
{
    const char *start = c->at;
    size_t n = number_length(c->at, c->end);
    if (n == 0) {
        size_t token = cursor_token(c);
        if (token == 0)
            return cursor_error(c, start, "'%s' has no value; write for example %s", what, example);
        return cursor_error(c, start, "'%s' needs a number, for example %s, got '%s'", what, example,
                            words_quoted(c->at, token).text);
    }
    *value = value_of(c->at, n);
    if (!isfinite(*value))
        return cursor_error(c, start, "'%s' has a number that is too large or too long", what);
    c->at += n;
    return true;
}

static bool number_read(cursor *c, const char *what, const char *example, double *value)
{
    const char *start = c->at;
    return number_begins(c, what, example, value) && number_ends(c, what, start);
}

static bool fraction_read(cursor *c, const char *what, const char *example, double *value)
{
    cursor_done(c);
    const char *start = c->at;
    size_t n = mixed_length(c->at, c->end, value);
    if (n == 0)
        return number_read(c, what, example, value);
    if (!(isfinite(*value) && *value > 0))
        return cursor_error(c, start, "a fraction must be positive and divided by something, got '%s'",
                            words_quoted(start, n).text);
    c->at += n;
    return number_ends(c, what, start);
}

/* The first dimension of a set: it lends the example. */
static unit_dimension first_of(unsigned dimensions)
{
    unsigned d = 0;
    while ((dimensions & UNIT_OF(d)) == 0)
        d++;
    return (unit_dimension)d;
}

#define EVERY_DIMENSION (UNIT_OF(DIM_COUNT) - 1u)

static void nearest_spelling(words_nearest *n, unsigned dimensions)
{
    for (unsigned d = 0; d < DIM_COUNT; d++) {
        const unit *u;
        for (size_t i = 0; (dimensions & UNIT_OF(d)) != 0 && (u = unit_listed((unit_dimension)d, i)) != NULL; i++)
            for (size_t k = 0; k < UNIT_SPELLINGS && u->spellings[k] != NULL; k++)
                words_consider(n, u->spellings[k]);
    }
}

static bool wrong_unit(cursor *c, const char *what, double number, unsigned dimensions)
{
    char accepted[160], kind[80], other[40];
    size_t token = cursor_token(c), used;
    words_quote q = words_quoted(c->at, token);
    unit_accepted(dimensions, accepted, sizeof accepted);
    unit_describe(dimensions, kind, sizeof kind);
    const char *refusal = unit_refusal(c->at, token);
    const unit *elsewhere = unit_scan(EVERY_DIMENSION, c->at, (size_t)(c->end - c->at), &used);
    if (token == 0 && dimensions == UNIT_OF(DIM_TIME))
        return cursor_error(c, c->at, "'%s' needs a unit: %.10g min, %.10g s or %.10g h?", what, number, number, number);
    if (token == 0)
        return cursor_error(c, c->at, "'%s' needs a unit, for example %s", what, unit_example(first_of(dimensions)));
    if (refusal != NULL)
        return cursor_error(c, c->at, "'%s' %s", q.text, refusal);
    if (elsewhere != NULL) {
        unit_describe(UNIT_OF(elsewhere->dimension), other, sizeof other);
        return cursor_error(c, c->at, "'%s' is %s, but '%s' is %s: use %s", words_quoted(c->at, used).text, other, what, kind,
                            accepted);
    }
    words_nearest n = words_near(c->at, token);
    nearest_spelling(&n, dimensions);
    return cursor_error(c, c->at, "'%s' is no unit of '%s', %s: use %s%s", q.text, what, kind, accepted,
                        words_suggestion(&n).text);
}

static const unit *unit_read(cursor *c, unsigned dimensions)
{
    size_t used;
    cursor_done(c);
    const unit *u = unit_scan(dimensions, c->at, (size_t)(c->end - c->at), &used);
    c->at += used;
    return u;
}

/* The dimensions that stand over the line of those that may be written with "per". */
static unsigned numerators(unsigned dimensions)
{
    unsigned found = 0;
    for (unsigned d = 0; d < DIM_COUNT; d++) {
        unit_dimension over, under;
        if ((dimensions & UNIT_OF(d)) != 0 && unit_quotient((unit_dimension)d, &over, &under))
            found |= UNIT_OF(over);
    }
    return found;
}

/* Which of the dimensions is `over` per something, and what that something is. */
static unit_dimension quotient_of(unsigned dimensions, unit_dimension over, unit_dimension *under)
{
    for (unsigned d = 0; d < DIM_COUNT; d++) {
        unit_dimension numerator;
        if ((dimensions & UNIT_OF(d)) != 0 && unit_quotient((unit_dimension)d, &numerator, under) && numerator == over)
            return (unit_dimension)d;
    }
    return DIM_COUNT;
}

/* Behind "1 lb": "per 2 gal". */
static bool per_read(cursor *c, unsigned dimensions, const unit *over, quantity *q)
{
    const char *what = "per";
    unit_dimension under;
    double divisor;
    q->dimension = quotient_of(dimensions, over->dimension, &under);
    q->unit = NULL;
    cursor_done(c);
    const char *start = c->at;
    if (!fraction_read(c, what, unit_example(under), &divisor))
        return false;
    const unit *u = unit_read(c, UNIT_OF(under));
    if (u == NULL)
        return wrong_unit(c, what, divisor, UNIT_OF(under));
    if (!(divisor > 0))
        return cursor_error(c, start, "'per' needs a positive number");
    q->si /= divisor * u->factor;
    return true;
}

/* "6 ft 3 in": the inches behind the feet, where they are. */
static void inches_read(cursor *c, quantity *q)
{
    size_t used;
    double value;
    cursor ahead = *c;
    cursor_done(&ahead);
    size_t n = mixed_length(ahead.at, ahead.end, &value);
    if (n == 0 && (n = number_length(ahead.at, ahead.end)) > 0)
        value = value_of(ahead.at, n);
    ahead.at = words_skip(ahead.at + n, ahead.end);
    const unit *u = n > 0 ? unit_scan(UNIT_OF(DIM_LENGTH), ahead.at, (size_t)(ahead.end - ahead.at), &used) : NULL;
    if (u == NULL || strcmp(u->spellings[0], "in") != 0 || !(value >= 0 && value < 12))
        return;
    q->si += value * u->factor;
    c->at = ahead.at + used;
}

static bool unit_apply(cursor *c, const char *what, unsigned dimensions, double value, quantity *q)
{
    const unit *u = unit_read(c, dimensions);
    if (u != NULL) {
        q->dimension = u->dimension;
        q->unit = u;
        q->si = (value + u->offset) * u->factor;
        if (u->dimension == DIM_LENGTH && strcmp(u->spellings[0], "ft") == 0)
            inches_read(c, q);
        return true;
    }
    const char *unit_at = c->at;
    u = unit_read(c, numerators(dimensions));
    if (u != NULL && cursor_take(c, "per")) {
        q->si = value * u->factor;
        return per_read(c, dimensions, u, q);
    }
    c->at = unit_at;
    return wrong_unit(c, what, value, dimensions);
}

static void mark_text(quantity *q, const char *start, const cursor *c)
{
    q->text = start;
    q->length = (size_t)(c->at - start);
}

bool quantity_read(cursor *c, const char *what, unsigned dimensions, quantity *q)
{
    double value;
    cursor_done(c);
    const char *start = c->at;
    if (!fraction_read(c, what, unit_example(first_of(dimensions)), &value) || !unit_apply(c, what, dimensions, value, q))
        return false;
    mark_text(q, start, c);
    return true;
}

bool quantity_comes(cursor c, unsigned dimensions)
{
    size_t used = 0;
    double value;
    cursor_done(&c);
    size_t n = mixed_length(c.at, c.end, &value);
    n = n > 0 ? n : number_length(c.at, c.end);
    c.at = words_skip(c.at + n, c.end);
    return n > 0 && unit_scan(dimensions, c.at, (size_t)(c.end - c.at), &used) != NULL;
}

bool quantity_number(cursor *c, const char *what, double *value)
{
    return fraction_read(c, what, "2", value);
}

bool quantity_share(cursor *c, const char *what, quantity *q)
{
    size_t used;
    cursor_done(c);
    const char *start = c->at;
    if (!number_read(c, what, unit_example(DIM_FRACTION), &q->si))
        return false;
    size_t length = (size_t)(c->at - start);
    cursor_done(c);
    if (!sign_at(c->at, c->end, '%') && q->si > 1) /* below, 0.6 may mean 60 % */
        return cursor_error(c, c->at, "'%s' is a percentage and needs its sign: %s %%", what, words_quoted(start, length).text);
    if (!sign_at(c->at, c->end, '%'))
        return cursor_error(c, c->at, "'%s' is a percentage and needs its sign, for example %s", what,
                            unit_example(DIM_FRACTION));
    c->at++;
    q->dimension = DIM_FRACTION;
    q->unit = unit_scan(UNIT_OF(DIM_FRACTION), "%", 1, &used);
    q->si *= q->unit->factor;
    mark_text(q, start, c);
    return true;
}

static bool bare(cursor *c, const char *what, const char *example, quantity *q)
{
    cursor_done(c);
    const char *start = c->at;
    if (!number_read(c, what, example, &q->si))
        return false;
    if (!cursor_done(c) && *c->at != ',')
        return cursor_error(c, c->at, "'%s' is a bare number, for example %s, without '%s'", what, example,
                            words_quoted(c->at, cursor_token(c)).text);
    q->dimension = DIM_COUNT;
    q->unit = NULL;
    mark_text(q, start, c);
    return true;
}

bool quantity_factor(cursor *c, const char *what, quantity *q)
{
    return bare(c, what, "1.0", q);
}

bool quantity_count(cursor *c, const char *what, quantity *q)
{
    return bare(c, what, "16", q);
}

static bool colon(cursor *c)
{
    bool there = sign_at(c->at, c->end, ':');
    c->at += there;
    return there;
}

bool quantity_turndown(cursor *c, const char *what, quantity *q)
{
    cursor_done(c);
    const char *start = c->at;
    if (!number_begins(c, what, "4 to 1", &q->si))
        return false;
    bool ratio = cursor_take(c, "to") || colon(c);
    cursor_done(c);
    if (!ratio || !cursor_take(c, "1"))
        return cursor_error(c, start, "'%s' is a ratio to 1: write 4 to 1", what);
    if (!(q->si >= 1))
        return cursor_error(c, start, "'%s' is at least 1 to 1", what);
    q->dimension = DIM_COUNT;
    q->unit = NULL;
    mark_text(q, start, c);
    return true;
}

bool quantity_price(cursor *c, const char *what, unsigned dimensions, quantity *q)
{
    double divisor = 1;
    cursor_done(c);
    const char *start = c->at, *example = unit_example(first_of(dimensions));
    if (!number_read(c, what, "1.20", &q->si))
        return false;
    if (!cursor_take(c, "per"))
        return cursor_error(c, c->at, "'%s' is a price: say 'per' and of how much, for example '6 per %s'", what, example);
    cursor_done(c);
    if (digits(c->at, c->end) > 0 && !fraction_read(c, "per", example, &divisor))
        return false;
    const unit *u = unit_read(c, dimensions);
    if (u == NULL)
        return wrong_unit(c, what, divisor, dimensions);
    if (!(q->si >= 0 && q->si <= 1e9 && divisor > 0))
        return cursor_error(c, start, "'%s' must be between 0 and 1e9, per more than nothing", what);
    q->si /= divisor * u->factor;
    q->dimension = u->dimension;
    q->unit = u;
    mark_text(q, start, c);
    return true;
}

/* ":" and two digits below 60 at the cursor, which moves past them. */
static bool sixtieths(cursor *c, double *value)
{
    if (!sign_at(c->at, c->end, ':') || digits(c->at + 1, c->end) != 2)
        return false;
    *value = value_of(c->at + 1, 2);
    c->at += 3;
    return *value < 60;
}

bool quantity_clock(cursor *c, const char *what, quantity *q)
{
    double minutes = 0, seconds = 0;
    cursor_done(c);
    const char *start = c->at;
    size_t n = digits(c->at, c->end), token = cursor_token(c);
    double hours = n > 0 ? value_of(c->at, n) : (double)NAN;
    c->at += n;
    bool good = isfinite(hours) && sixtieths(c, &minutes) && (!sign_at(c->at, c->end, ':') || sixtieths(c, &seconds));
    if (!good || c->at != start + token)
        return cursor_error(c, start, "'%s' needs a clock such as 6:00 or 6:00:00, got '%s'", what,
                            words_quoted(start, token).text);
    *q = (quantity){hours * 3600 + minutes * 60 + seconds, DIM_TIME, NULL, start, token};
    return true;
}

bool quantity_when(cursor *c, const char *what, quantity *q)
{
    cursor_done(c);
    size_t n = digits(c->at, c->end);
    if (n > 0 && sign_at(c->at + n, c->end, ':'))
        return quantity_clock(c, what, q);
    return quantity_read(c, what, UNIT_OF(DIM_TIME), q);
}

/* -40 degC is 233.15 K, and not 233.14999999999998. */
static bool is_end(quantity *q, double end)
{
    char text[32];
    if (!isfinite(end) || !(fabs(q->si - end) <= 1e-12 * fabs(end)))
        return false;
    snprintf(text, sizeof text, "%.12g", end);
    q->si = strtod(text, NULL);
    return true;
}

bool quantity_within(const cursor *c, const char *what, quantity *q, const bounds *b)
{
    const char *spelling = b->unit != NULL ? b->unit : "", *gap = b->unit != NULL ? " " : "";
    const unit *u = b->unit != NULL ? unit_spelt(q->dimension, b->unit) : NULL;
    double low = b->unit != NULL ? unit_si_value(u, b->low) : b->low;
    double high = b->unit != NULL ? unit_si_value(u, b->high) : b->high;
    if (is_end(q, low) || is_end(q, high) || (q->si > low && q->si < high))
        return true;
    char own[80] = "";
    bool in_another = q->unit != NULL && b->unit != NULL &&
                      unit_to_si(q->dimension, b->unit, 1) != unit_to_si(q->dimension, q->unit->spellings[0], 1);
    if (in_another) {
        const char *its = q->unit->spellings[0];
        snprintf(own, sizeof own, " (%.4g %s to %.4g %s)", unit_from_si(q->dimension, its, low), its,
                 unit_from_si(q->dimension, its, high), its);
    }
    return cursor_error(c, q->text, "'%s' must be between %.10g%s%s and %.10g%s%s, got '%s'%s", what, b->low, gap, spelling,
                        b->high, gap, spelling, words_quoted(q->text, q->length).text, own);
}

words_quote quantity_echo(const quantity *q)
{
    words_quote as_written = words_quoted(q->text, q->length), echo = {""};
    unsigned whole, part, of;
    int used = 0;
    size_t first = digits(as_written.text, as_written.text + strlen(as_written.text));
    bool fraction_alone = as_written.text[first] == '/';
    if (fraction_alone || strchr(as_written.text, '/') == NULL ||
        sscanf(as_written.text, "%6u %6u/%6u%n", &whole, &part, &of, &used) != 3 || of == 0)
        return as_written;
    TEXT_ADD(echo.text, "%.6g%s", whole + (double)part / of, as_written.text + used);
    return echo;
}
