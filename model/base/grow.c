#include "base/grow.h"

#include <stdint.h>
#include <stdlib.h>

void *boil_array_reserve(void *list, size_t *room, size_t count, size_t size)
{
    if (count < *room)
        return list;
    size_t more = *room ? 2 * *room : 16;
    if (more > SIZE_MAX / size)
        return NULL;
    void *moved = realloc(list, more * size);
    if (moved)
        *room = more;
    return moved;
}
