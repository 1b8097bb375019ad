/* base/array.h -- lists that grow. */
#ifndef BOIL_BASE_ARRAY_H
#define BOIL_BASE_ARRAY_H

#include <stddef.h>

/* Room for one more item of a size behind `count`: the list, moved perhaps, or NULL when memory is refused (the old one then
   stands). A list that is NULL holds nothing, whatever its capacity says. */
void *boil_array_reserve(void *list, size_t *capacity, size_t count, size_t size);

#endif
