#include "actions/load_shape.h"

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
