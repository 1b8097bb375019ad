#include "actions/load_shape.h"

#include <string.h>

#include "base/words.h"

static const bounds part_size = {"mm", 0.1, 1000};

static const load_shape shapes[] = {
    {"plate", "thickness", BOIL_SHAPE_PLATE},
    {"bar", "diameter", BOIL_SHAPE_BAR},
    {"ball", "diameter", BOIL_SHAPE_BALL},
    {"tube", "outer diameter, then 'wall' and its thickness", BOIL_SHAPE_TUBE},
};

#define SHAPES (sizeof shapes / sizeof shapes[0])

const load_shape *load_shape_listed(size_t index)
{
    return index < SHAPES ? &shapes[index] : NULL;
}

static bool unknown_shape(cursor *part)
{
    size_t token = cursor_token(part);
    words_nearest n = words_near(part->at, token);
    for (size_t i = 0; i < SHAPES; i++)
        words_consider(&n, shapes[i].words);
    return cursor_error(part, part->at, "expected a shape (plate, bar, ball or tube) and its size, got '%s'%s",
                        words_quoted(part->at, token).text, words_suggestion(&n).text);
}

static bool read_size(cursor *part, const char *what, double *value, quantity *q)
{
    if (!quantity_read(part, what, UNIT_OF(DIM_LENGTH), q) || !quantity_within(part, what, q, &part_size))
        return false;
    *value = q->si;
    return true;
}

static bool read_wall(cursor *part, boil_load *l)
{
    quantity q;
    if (!cursor_take(part, "wall"))
        return cursor_error(part, part->at, "a tube needs its wall, for example 'tube 1 in wall 2 mm'");
    if (!read_size(part, "wall", &l->tube_wall_m, &q))
        return false;
    if (!(l->tube_wall_m < l->size_m / 2))
        return cursor_error(part, q.text, "the wall of a tube must be less than half its diameter");
    return true;
}

bool load_shape_read(cursor *part, boil_load *l, const char **word, quantity *size)
{
    size_t i = 0;
    while (i < SHAPES && !cursor_take(part, shapes[i].words))
        i++;
    if (i == SHAPES)
        return unknown_shape(part);
    l->shape = shapes[i].shape;
    *word = shapes[i].words;
    if (!read_size(part, *word, &l->size_m, size))
        return false;
    if (l->shape == BOIL_SHAPE_TUBE && !read_wall(part, l))
        return false;
    return cursor_expect_end(part);
}

/* Steel and iron enter; all else is refused with the reason.

   Zinc, aluminium, tin and lead are amphoteric: hot caustic dissolves them, zinc and aluminium with much hydrogen (any
   textbook of inorganic chemistry). That copper and its alloys, tin and lead spoil the bath and the finish is common
   practice, no source. Magnesium in contact with hot nitrates may burn violently: a standing warning for nitrate salt baths. */
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
