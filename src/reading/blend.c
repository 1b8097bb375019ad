#include "reading/quantity.h"

#include <string.h>

#include "base/words.h"

static const bounds share = {"%", 0, 100};

static const struct {
    const char *name;
    int salt;
} salts[] = {
    {"NaOH", BOIL_NAOH},   {"sodium hydroxide", BOIL_NAOH}, {"NaNO3", BOIL_NANO3}, {"sodium nitrate", BOIL_NANO3},
    {"NaNO2", BOIL_NANO2}, {"sodium nitrite", BOIL_NANO2},
};

#define SALT_NAMES (sizeof salts / sizeof salts[0])

/* The salt named at the cursor, which moves past it; -1 and a message when there is none. */
static int read_salt(cursor *c)
{
    size_t token = cursor_token(c);
    words_nearest n = words_near(c->at, token);
    for (size_t i = 0; i < SALT_NAMES; i++) {
        if (cursor_take(c, salts[i].name))
            return salts[i].salt;
        words_consider(&n, salts[i].name);
    }
    if (words_same(c->at, token, "saltpetre") || words_same(c->at, token, "saltpeter")) {
        cursor_error(c, c->at, "'%s' may be sodium or potassium nitrate; the sodium salt is written NaNO3",
                     words_quoted(c->at, token).text);
        return -1;
    }
    cursor_error(c, c->at, "expected a salt (NaOH, NaNO3 or NaNO2), got '%s'%s", words_quoted(n.text, n.length).text,
                 words_suggestion(&n).text);
    return -1;
}

static bool read_part(cursor *c, const char *what, double blend[BOIL_SALTS], bool named[BOIL_SALTS])
{
    quantity q;
    if (!quantity_share(c, what, &q) || !quantity_within(c, what, &q, &share))
        return false;
    cursor_done(c);
    const char *salt_at = c->at;
    int salt = read_salt(c);
    if (salt < 0)
        return false;
    if (named[salt])
        return cursor_error(c, salt_at, "this salt is named twice");
    named[salt] = true;
    blend[salt] = q.si;
    return true;
}

/* Passes a comma, unless what follows it is no more of the blend. */
static bool goes_on(cursor *c, const char *until)
{
    if (cursor_done(c) || *c->at != ',')
        return false;
    const char *next = words_skip(c->at + 1, c->end);
    if (until != NULL && words_taken(next, c->end, until) > 0)
        return false;
    c->at++;
    return true;
}

/* Where some are missing and one salt is not named, it may be that one. */
static bool wrong_sum(const cursor *c, const char *start, const char *what, double sum, const bool named[BOIL_SALTS])
{
    static const char *const formulas[] = {[BOIL_NAOH] = "NaOH", [BOIL_NANO3] = "NaNO3", [BOIL_NANO2] = "NaNO2"};
    int unnamed = 0, which = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        if (!named[i]) {
            which = i;
            unnamed++;
        }
    if (sum < 1 && unnamed == 1)
        return cursor_error(c, start, "the shares of '%s' add up to %.4g %%: %.4g %% are missing; %s?", what, 100 * sum,
                            100 * (1 - sum), formulas[which]);
    return cursor_error(c, start, "the shares of '%s' must add up to 100 %%, not to %.4g %%", what, 100 * sum);
}

/* "80/15/5": numbers alone. */
static bool is_bare(const cursor *c)
{
    const char *at = c->at;
    while (at < c->end && ((*at >= '0' && *at <= '9') || *at == '/' || *at == '.'))
        at++;
    return at == c->end && memchr(c->at, '/', (size_t)(at - c->at)) != NULL;
}

bool blend_read(cursor *c, const char *what, const char *until, double out[BOIL_SALTS])
{
    double blend[BOIL_SALTS] = {0}, sum = 0;
    bool named[BOIL_SALTS] = {false};
    const char *start = c->at;
    if (is_bare(c))
        return cursor_error(c, start,
                            "write each share with its salt, for example 80 %% NaOH, 15 %% NaNO3, 5 %% NaNO2: "
                            "no order is assumed");
    do {
        if (!read_part(c, what, blend, named))
            return false;
    } while (goes_on(c, until));
    for (int i = 0; i < BOIL_SALTS; i++)
        sum += blend[i];
    if (!(sum >= 0.9995 - 1e-9 && sum <= 1.0005 + 1e-9))
        return wrong_sum(c, start, what, sum, named);
    for (int i = 0; i < BOIL_SALTS; i++)
        out[i] = blend[i] / sum;
    return true;
}
