#include "reading/source.h"

#include <stdlib.h>

/* The forms of RFC 3629, by first byte. */
static const struct {
    unsigned char first, last, second_low, second_high;
    size_t length;
} forms[] = {{0x00, 0x7F, 0, 0, 1},       {0xC2, 0xDF, 0x80, 0xBF, 2}, {0xE0, 0xE0, 0xA0, 0xBF, 3},
             {0xE1, 0xEC, 0x80, 0xBF, 3}, {0xED, 0xED, 0x80, 0x9F, 3}, {0xEE, 0xEF, 0x80, 0xBF, 3},
             {0xF0, 0xF0, 0x90, 0xBF, 4}, {0xF1, 0xF3, 0x80, 0xBF, 4}, {0xF4, 0xF4, 0x80, 0x8F, 4}};

static bool between(char byte, unsigned char low, unsigned char high)
{
    return (unsigned char)byte >= low && (unsigned char)byte <= high;
}

size_t source_character(const char *at, size_t left)
{
    for (size_t i = 0; i < sizeof forms / sizeof forms[0]; i++) {
        if (!between(at[0], forms[i].first, forms[i].last))
            continue;
        if (forms[i].length > left || (forms[i].length > 1 && !between(at[1], forms[i].second_low, forms[i].second_high)))
            return 0;
        for (size_t k = 2; k < forms[i].length; k++)
            if (!between(at[k], 0x80, 0xBF))
                return 0;
        return forms[i].length;
    }
    return 0;
}

bool source_is_control(const char *at, size_t length)
{
    if (length == 1)
        return (between(at[0], 0, 0x1F) && at[0] != '\t') || at[0] == 0x7F;
    return length == 2 && between(at[0], 0xC2, 0xC2) && between(at[1], 0x80, 0x9F);
}

void source_free(source *s)
{
    free(s->name);
    free(s->bytes);
    free(s->lines);
    *s = (source){0};
}
