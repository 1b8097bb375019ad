#include "base/grow.h"

#include <stdint.h>
#include <stdlib.h>

void *boil_array_reserve(void *list, size_t *capacity, size_t count, size_t size)
{
    if (count < *capacity)
        return list;
    size_t more = *capacity ? 2 * *capacity : 16;
    if (more > SIZE_MAX / size)
        return NULL;
    void *moved = realloc(list, more * size);
    if (moved)
        *capacity = more;
    return moved;
}
