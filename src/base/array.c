#include "base/array.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

void *array_reserve(void *list, size_t *capacity, size_t count, size_t item_size)
{
    if (list != NULL && count < *capacity)
        return list;
    size_t more = *capacity < 8 ? 8 : *capacity * 2;
    if (more > SIZE_MAX / item_size)
        return NULL;
    void *moved = realloc(list, more * item_size);
    if (moved != NULL)
        *capacity = more;
    return moved;
}

char *array_text(const char *text, size_t length)
{
    char *copy = malloc(length + 1);
    if (copy != NULL) {
        memcpy(copy, text, length);
        copy[length] = '\0';
    }
    return copy;
}
