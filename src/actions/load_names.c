#include "actions/action.h"

#include <stdlib.h>

#include "base/array.h"
#include "base/text.h"
#include "base/words.h"

int load_names_read(load_names *n, cursor *c)
{
    const char *start = words_skip(c->at, c->end);
    size_t length = (size_t)(words_trim(start, c->end) - start);
    c->at = c->end;
    for (size_t i = 0; i < n->count; i++)
        if (words_same(start, length, n->list[i]))
            return (int)i + 1;
    char **list = boil_array_reserve(n->list, &n->capacity, n->count, sizeof *list);
    char *copy = list != NULL && n->count < LOAD_NAMES_MAX ? text_copy(start, length) : NULL;
    if (list != NULL)
        n->list = list;
    if (copy == NULL) {
        cursor_error(c, start, "there are more than %d names of loads", LOAD_NAMES_MAX);
        return 0;
    }
    list[n->count++] = copy;
    return (int)n->count;
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
    n->list = NULL;
    n->count = n->capacity = 0;
}
