/* keys.h -- every setting a scenario may hold, in one table: where it is written, what it may be, what it means, where
   it goes. */
#ifndef KEYS_H
#define KEYS_H

#include "quantity.h"

typedef enum {
    KEY_TITLE,     /* the whole rest of the line; char * */
    KEY_PATH,      /* a file's name; char * */
    KEY_CLOCK,     /* time of day; double, s */
    KEY_SPAN,      /* clock or time; double, s */
    KEY_QUANTITY,  /* double, SI */
    KEY_SHARE,     /* percentage; double, 0 to 1 */
    KEY_FACTOR,    /* bare number; double */
    KEY_RANGE,     /* quantity to quantity; two doubles, SI */
    KEY_BLEND,     /* percentages of the salts; BOIL_SALTS doubles, sum 1 */
    KEY_CHOICE     /* one of some words; an enum that counts them from 0 */
} key_kind;

typedef enum {
    NEED_NOT,      /* has a default */
    NEED_ALWAYS,
    NEED_BOX,      /* with this shape of tank, and only then */
    NEED_CYLINDER,
    NEED_STRENGTH, /* exactly one of these */
    NEED_PRESSURE  /* at most one of these */
} key_need;

typedef struct {
    const char *section;          /* "" above the first one */
    const char *words;
    const char *meaning;
    key_kind kind;
    key_need need;
    unit_dimension dimension;     /* of a quantity or range; else DIM_COUNT, DIM_TIME or DIM_FRACTION */
    bounds within;
    size_t where;                 /* in the scenario */
    const char *const *choices;   /* ends in NULL */
    const char *zero;             /* a word that stands for 0, or NULL */
    const char *otherwise;        /* what holds when it is left out, if no value in the plant says so; or NULL */
} key;

size_t key_count(void);
const key *key_at(size_t index);

const char *const *key_sections(void); /* ends in NULL; the top is not one of them */
const key *key_find(const char *section, const char *text, size_t length);       /* NULL: not there */
const key *key_find_elsewhere(const char *text, size_t length);                  /* in any section */
size_t key_index(const key *k);

typedef struct {
    char text[64];
} key_section_text;
key_section_text key_place(const char *section); /* "in [tank]", "above the first section" */

#endif
