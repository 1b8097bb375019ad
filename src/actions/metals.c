/* actions/metals.c -- steel and iron enter; all else is refused with the reason.

   Zinc, aluminium, tin and lead are amphoteric: hot caustic dissolves them, zinc and aluminium with much hydrogen (any
   textbook of inorganic chemistry). That copper and its alloys, tin and lead spoil the bath and the finish is common
   practice, no source. Magnesium in contact with hot nitrates may burn violently: a standing warning for nitrate salt
   baths. */
#include "actions/load_shape.h"

#include <string.h>

#include "base/words.h"

#define NEVER "; non-ferrous metal must never enter the bath"
#define HYDROGEN "dissolves violently in hot caustic and gives off hydrogen, which may explode" NEVER
#define SPOILS "contaminates the bath and spoils the finish of everything after it" NEVER
#define DISSOLVES "dissolves in hot caustic and contaminates the bath" NEVER

static const struct {
    const char *name, *reason;
} refused[] = {
    {"aluminium", HYDROGEN},
    {"aluminum", HYDROGEN},
    {"zinc", HYDROGEN},
    {"galvanised", "is coated with zinc, which " HYDROGEN},
    {"galvanized", "is coated with zinc, which " HYDROGEN},
    {"magnesium", "may burn violently with the hot nitrate and nitrite" NEVER},
    {"titanium", "is attacked by hot strong caustic and takes up hydrogen" NEVER},
    {"copper", SPOILS},
    {"brass", "holds copper and zinc and " SPOILS},
    {"bronze", "holds copper and tin and " SPOILS},
    {"cadmium", SPOILS},
    {"tin", DISSOLVES},
    {"tinned", "is coated with tin, which " DISSOLVES},
    {"solder", "holds tin, which " DISSOLVES},
    {"soldered", "holds tin, which " DISSOLVES},
    {"lead", DISSOLVES},
    {"pewter", "is mostly tin, which " DISSOLVES},
    {"nickel", "is not blackened by this bath" NEVER},
    {"chromium", "is not blackened by this bath" NEVER},
    {"stainless", "is not blackened by this bath: its chromium keeps the black oxide from forming"},
};

#define REFUSED (sizeof refused / sizeof refused[0])

static const char *reason_of(const char *name, size_t length)
{
    for (size_t i = 0; i < REFUSED; i++)
        if (words_same(name, length, refused[i].name))
            return refused[i].reason;
    return NULL;
}

/* Why a metal named by any word of the text must not enter; NULL when none of them is known. */
static const char *refusal(cursor c)
{
    const char *reason = NULL;
    for (size_t n; reason == NULL && (n = cursor_token(&c)) > 0; c.at += n)
        reason = reason_of(c.at, n);
    return reason;
}

/* A misspelt metal that must not enter is refused as such. */
static void unknown_metal(const cursor *c, size_t length)
{
    words_nearest n = words_near(c->at, length);
    words_quote q = words_quoted(c->at, length);
    words_consider(&n, "steel");
    words_consider(&n, "iron");
    for (size_t i = 0; i < REFUSED; i++)
        words_consider(&n, refused[i].name);
    const char *reason = n.word != NULL ? reason_of(n.word, strlen(n.word)) : NULL;
    if (reason != NULL)
        cursor_error(c, c->at, "unknown metal '%s'; if %s is meant: it %s", q.text, n.word, reason);
    else
        cursor_error(c, c->at, "unknown metal '%s'; only steel and iron may enter%s", q.text, words_suggestion(&n).text);
}

bool metal_read(cursor *c, const char **word)
{
    *word = "steel";
    if (cursor_done(c))
        return true;
    size_t length = (size_t)(c->end - c->at);
    if (words_same(c->at, length, "steel"))
        return true;
    if (words_same(c->at, length, "iron")) {
        *word = "iron";
        return true;
    }
    const char *reason = refusal(*c);
    if (reason != NULL)
        cursor_error(c, c->at, "'%s' %s", words_quoted(c->at, length).text, reason);
    else
        unknown_metal(c, length);
    return false;
}
