/* base/array.h -- lists that grow. */
#ifndef BASE_ARRAY_H
#define BASE_ARRAY_H

#include <stddef.h>

/* Room for one more item behind `count`: the list, moved perhaps, or NULL when memory is refused (the old one then
   stands). */
void *array_reserve(void *list, size_t *capacity, size_t count, size_t item_size);

char *array_text(const char *text, size_t length); /* a copy that ends in NUL; NULL when memory is refused */

#endif
