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

/* Parts whose size could be either of two. */
static const struct {
    const char *words, *ask;
} asked[] = {
    {"nut", "a nut of what thickness? write plate 1/4 in"},
    {"nuts", "nuts of what thickness? write plate 1/4 in"},
    {"washer", "a washer of what thickness? write plate 1/8 in"},
    {"washers", "washers of what thickness? write plate 1/8 in"},
};

static bool unknown_shape(cursor *part)
{
    size_t token = cursor_token(part);
    for (size_t i = 0; i < sizeof asked / sizeof asked[0]; i++)
        if (words_same(part->at, token, asked[i].words))
            return cursor_error(part, part->at, "%s", asked[i].ask);
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
    {"alu", HYDROGEN},
    {"aluminised", "is coated with aluminium, which " HYDROGEN},
    {"aluminized", "is coated with aluminium, which " HYDROGEN},
    {"zinc", HYDROGEN},
    {"zincked", "is coated with zinc, which " HYDROGEN},
    {"galv", "is coated with zinc, which " HYDROGEN},
    {"galvanised", "is coated with zinc, which " HYDROGEN},
    {"galvanized", "is coated with zinc, which " HYDROGEN},
    {"magnesium", "may burn violently with the hot nitrate and nitrite" NEVER},
    {"titanium", "is attacked by hot strong caustic and takes up hydrogen" NEVER},
    {"copper", SPOILS},
    {"brass", "holds copper and zinc and " SPOILS},
    {"bronze", "holds copper and tin and " SPOILS},
    {"cadmium", SPOILS},
    {"cad", "is cadmium, which " SPOILS},
    {"tin", DISSOLVES},
    {"tinned", "is coated with tin, which " DISSOLVES},
    {"solder", "holds tin, which " DISSOLVES},
    {"soldered", "holds tin, which " DISSOLVES},
    {"lead", DISSOLVES},
    {"pewter", "is mostly tin, which " DISSOLVES},
    {"nickel", "is not blackened by this bath" NEVER},
    {"chromium", "is not blackened by this bath" NEVER},
    {"chrome", "is not blackened by this bath" NEVER},
    {"chromed", "is coated with chromium, which is not blackened by this bath" NEVER},
    {"stainless", "is not blackened by this bath: its chromium keeps the black oxide from forming"},
};

#define REFUSED (sizeof refused / sizeof refused[0])

/* All of them begin with a small letter, which decides for nearly every word of a line. */
static const char *reason_of(const char *name, size_t length)
{
    char first = (char)(*name | ' ');
    if (!words_letter(first))
        return NULL;
    for (size_t i = 0; i < REFUSED; i++)
        if (refused[i].name[0] == first && words_same(name, length, refused[i].name))
            return refused[i].reason;
    return NULL;
}

/* No sign, and no blank. */
static bool is_of_word(char c)
{
    switch (c) {
    case ',':
    case '-':
    case '(':
    case ')':
    case '/':
    case '.':
    case ';':
    case ':':
    case '+':
        return false;
    default:
        return (unsigned char)c > ' ';
    }
}

/* Bytes of the text that belong to one word: letters, and what is beyond ASCII. */
static size_t letters(const char *at, const char *end)
{
    size_t n = 0;
    while (at + n < end && is_of_word(at[n]))
        n++;
    return n;
}

/* Why a metal named by any word of a stretch must not enter; NULL when none of them is known. The cursor is then at that word. */
static const char *refusal(cursor *c)
{
    for (size_t n; c->at<c->end; c->at += n> 0 ? n : 1) {
        n = letters(c->at, c->end);
        const char *reason = n > 0 ? reason_of(c->at, n) : NULL;
        if (reason != NULL)
            return reason;
    }
    return NULL;
}

/* A name of parts that were stripped of their coat says so at its end. */
static bool is_stripped_name(const cursor *part)
{
    static const char word[] = "(stripped)";
    size_t length = sizeof word - 1;
    return words_taken(part->at, part->end, "as") > 0 && (size_t)(part->end - part->at) >= length &&
           words_same(part->end - length, length, word);
}

/* Up to the next comma. */
static cursor next_part(cursor *line)
{
    cursor part = *line;
    const char *comma = memchr(line->at, ',', (size_t)(line->end - line->at));
    part.end = words_trim(part.at, comma != NULL ? comma : line->end);
    part.at = words_skip(part.at, part.end);
    line->at = comma != NULL ? comma + 1 : line->end;
    return part;
}

bool metal_refused(cursor line)
{
    while (line.at < line.end) {
        cursor part = next_part(&line), word = part;
        const char *reason = is_stripped_name(&part) ? NULL : refusal(&word);
        if (reason == NULL)
            continue;
        size_t length = cursor_token(&word);
        bool name = words_taken(part.at, part.end, "as") > 0;
        cursor_error(&word, word.at, "'%s' %s%s", words_quoted(word.at, length).text, reason,
                     name ? "; parts that are bare steel again have a name that ends in '(stripped)'" : "");
        return true;
    }
    return false;
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
    if (words_taken(c->at, c->end, "of") > 0)
        cursor_error(c, c->at,
                     "'%s': a load is told by its shape, not by what the parts are: ', plate 1/8 in' (brackets and sheet, as "
                     "thick as the steel is), ', bar', ', ball' or ', tube'; a name goes behind 'as'",
                     q.text);
    else if (reason != NULL)
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
    unknown_metal(c, length);
    return false;
}
