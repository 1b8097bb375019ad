/* base/grow.h -- room for one more in a list. */
#ifndef BOIL_BASE_GROW_H
#define BOIL_BASE_GROW_H

#include <stddef.h>

/* The list, moved if need be, with room for at least count + 1 items of a size; NULL when memory is refused (the old list
   still stands then). */
void *boil_array_reserve(void *list, size_t *capacity, size_t count, size_t size);

#endif
