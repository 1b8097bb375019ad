#include "reading/quantity.h"

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

bool blend_read(cursor *c, const char *what, const char *until, double out[BOIL_SALTS])
{
    double blend[BOIL_SALTS] = {0}, sum = 0;
    bool named[BOIL_SALTS] = {false};
    const char *start = c->at;
    do {
        if (!read_part(c, what, blend, named))
            return false;
    } while (goes_on(c, until));
    for (int i = 0; i < BOIL_SALTS; i++)
        sum += blend[i];
    if (!(sum >= 0.9995 - 1e-9 && sum <= 1.0005 + 1e-9))
        return cursor_error(c, start, "the shares of '%s' must add up to 100 %%, not to %.4g %%", what, 100 * sum);
    for (int i = 0; i < BOIL_SALTS; i++)
        out[i] = blend[i] / sum;
    return true;
}
