/* random/draft.h -- a scenario as lines whose quantities and moments are still in SI, so that the same one can be written in other
   units, by another clock and in another order; and so that it can be made shorter line by line. */
#ifndef RANDOM_DRAFT_H
#define RANDOM_DRAFT_H

#include <stdint.h>
#include <stdio.h>

#include "base/text.h"
#include "base/units.h"

#define DRAFT_LINES 200

/* A text in which {0 0.5} stands for half a metre, the number before it being the dimension, {@ 90} for a moment, s from the
   start, and {^ 90} for the wall clock then, to a minute. */
typedef TEXT_OF(320) draft_text;
typedef TEXT_OF(48) draft_token;

typedef struct {
    const char *section; /* static text; "": above the first one */
    int group;           /* lines of one group keep their order */
    draft_text line;
} draft_line;

typedef struct {
    draft_line lines[DRAFT_LINES];
    size_t count;
    int groups;
    double start_s; /* wall clock */
    bool by_clock;  /* moments are those of the wall */
} draft;

/* How it is written: each 0 as it was drawn. */
typedef struct {
    double later_s; /* the wall clock of the start, whole minutes */
    uint64_t units; /* each quantity in some unit other than the first of its dimension */
    uint64_t order; /* sections, and what stands in them, in another order */
} draft_style;

/* For the expression they stand in. */
draft_token draft_quantity(unit_dimension d, double si);
draft_token draft_moment(double s);
#define OF(dimension, si) draft_quantity(DIM_##dimension, si).text
#define AT(s) draft_moment(s).text

int draft_group(draft *d); /* a new one */
void draft_add(draft *d, const char *section, int group, const char *format, ...) __attribute__((format(printf, 4, 5)));

/* A setting, a group of its own. */
#define draft_set(d, section, ...) draft_add(d, section, draft_group(d), __VA_ARGS__)

void draft_write(const draft *d, const draft_style *s, FILE *to);
bool draft_write_file(const draft *d, const draft_style *s, const char *path); /* false: it could not be */

/* As it is, to be kept: no change in how scenarios are drawn changes it. False: the file holds no draft. */
void draft_keep(const draft *d, FILE *to);
bool draft_kept(FILE *from, draft *d);

#endif
