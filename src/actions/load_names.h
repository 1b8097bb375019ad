/* actions/load_names.h -- the names that loads are given, each with a number from 1; 0 is no name. */
#ifndef ACTIONS_LOAD_NAMES_H
#define ACTIONS_LOAD_NAMES_H

#include <stdbool.h>
#include <stddef.h>

#include "reading/cursor.h"

#define LOAD_NAMES_MAX 1000

typedef struct {
    char **list;
    size_t count, capacity;
    /* By number: a load is so named; one so named has a mistake, so that nothing is said about its lift. */
    bool loaded[LOAD_NAMES_MAX + 1], broken[LOAD_NAMES_MAX + 1];
} load_names;

/* The number of the name on the rest of a cursor, which is added when it is new; 0 and a message when it cannot be. */
int load_names_read(load_names *n, cursor *c);
const char *load_names_word(const load_names *n, int number); /* "" for 0 */
void load_names_free(load_names *n);

#endif
