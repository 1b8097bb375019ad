/* scenario/keys.h -- every setting a scenario may hold, in one table: where it is written, what it may be, what it means, where
   it goes. */
#ifndef SCENARIO_KEYS_H
#define SCENARIO_KEYS_H

#include "base/text.h"
#include "reading/quantity.h"

typedef enum {
    KEY_TITLE,    /* the whole rest of the line; char * */
    KEY_WORD,     /* one word; char * */
    KEY_PATH,     /* a file's name; char * */
    KEY_CLOCK,    /* time of day; double, s */
    KEY_SPAN,     /* clock or time; double, s */
    KEY_QUANTITY, /* double, SI */
    KEY_SHARE,    /* percentage; double, 0 to 1 */
    KEY_FACTOR,   /* bare number; double */
    KEY_WHOLE,    /* whole number; double */
    KEY_PRICE,    /* number per unit of either dimension; double, per SI unit */
    KEY_TURNDOWN, /* "4 to 1"; double, 4 */
    KEY_RANGE,    /* quantity to quantity; two doubles, SI */
    KEY_AFLOAT,   /* mass or volume, perhaps 'at' a temperature; two doubles, SI */
    KEY_BLEND,    /* percentages of the salts; BOIL_SALTS doubles, sum 1 */
    KEY_CHOICE,   /* one of some words; an enum that counts them from 0 */
    KEY_SWITCH    /* one of two words; bool: the second of them */
} key_kind;

typedef enum {
    NEED_NOT, /* has a default */
    NEED_ALWAYS,
    NEED_SALTS,    /* unless the bath is plain water */
    NEED_LEVEL,    /* exactly one of these */
    NEED_STRENGTH, /* exactly one of these */
    NEED_STEAM,    /* exactly one of these */
    NEED_PRESSURE, /* at most one of these */
    NEED_FIRE      /* likewise */
} key_need;

/* Where a key belongs: in every scenario, or only in one with ... */
typedef enum {
    CASE_ANY,
    CASE_BOX, /* this shape of tank */
    CASE_CYLINDER,
    CASE_FUEL, /* gas or electricity as the source of heat */
    CASE_GAS,
    CASE_STEAM,
    CASE_BY_HAND, /* this control of the heat */
    CASE_BY_CONTROL,
    CASE_NOT_MODULATING,
    CASE_MODULATING,
    CASE_RINSE,   /* a section [rinse] */
    CASE_PRICES,  /* a section [prices] */
    CASE_EXHAUST, /* a section [exhaust] */
    CASE_DESIGN,  /* a section [design] */
    CASE_LESSON,  /* a section [lesson] */
    CASE_PLAN,    /* a section [plan] */
    CASE_CONTROL, /* a section [water control] */
    CASE_ON_OFF,  /* this mode of it, or none */
    CASE_PROPORTIONED
} key_case;

typedef struct key {
    const char *section; /* "" above the first one */
    const char *words;
    const char *meaning;
    key_kind kind;
    unit_dimension dimension; /* of a quantity or range; else DIM_COUNT, DIM_TIME or DIM_FRACTION */
    bounds within;
    size_t where; /* in the scenario */
    key_need need;
    key_case only;              /* it is needed, and allowed, only there */
    const char *const *choices; /* ends in NULL */
    const char *zero;           /* a word that stands for 0, or NULL */
    unit_dimension other;       /* a quantity may be of this dimension too, if within_other has a unit; a price always */
    bounds within_other;
    const char *otherwise; /* what holds when it is left out, if no value in the plant says so; or NULL */
} key;

size_t key_count(void);
const key *key_at(size_t index);

const char *const *key_sections(void);           /* ends in NULL; the top is not one of them */
bool key_section_is_script(const char *section); /* one that goes with a lesson's scripts: [careful], [choices], ... */
const key *key_find(const char *section, const char *text, size_t length); /* NULL: not there */
const key *key_named(const char *section, const char *words);              /* one that is there */
const key *key_find_elsewhere(const char *text, size_t length);            /* in any section */

/* A name that other people give to a key; NULL: it is none. The answer follows the name in a message. */
typedef struct {
    const char *section, *typed;
    const char *means;  /* words of the key */
    const char *answer; /* NULL: it is worked out */
} key_misnomer;
const key_misnomer *key_misnamed(const char *section, const char *text, size_t length);

size_t key_index(const key *k);
bool key_has_other(const key *k);

typedef TEXT_OF(64) key_section_text;
key_section_text key_place(const char *section); /* "in [tank]", "above the first section" */

#endif
