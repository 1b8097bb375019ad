#include "base/array.h"

#include <stdint.h>
#include <stdlib.h>

void *boil_array_reserve(void *list, size_t *capacity, size_t count, size_t size)
{
    const size_t first = 8;
    if (list != NULL && count < *capacity)
        return list;
    size_t more = list == NULL || *capacity < first ? first : *capacity;
    while (more <= count && more <= SIZE_MAX / 2)
        more *= 2;
    if (more <= count || more > SIZE_MAX / size)
        return NULL;
    void *moved = realloc(list, more * size);
    if (moved != NULL)
        *capacity = more;
    return moved;
}
