/* validate/validate.h -- every comparison of the model with something outside the project, row by row of the tables in
   tests/published. A group's file says how each of its quantities is worked out; one place reads all tables, one prints. */
#ifndef VALIDATE_VALIDATE_H
#define VALIDATE_VALIDATE_H

#include "support/evidence.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

/* How the rows of a quantity are worked out. */
typedef struct {
    const char *group;    /* NULL: the row's column says it */
    const char *quantity; /* as in the row's column; NULL: every row of the table, which may have no such column */
    const char *
        label; /* what is compared: {column} stands for the row's field; a part between commas goes whose field is nan or empty */
    const char *unit;                      /* of value; NULL: the row's column says it */
    double (*of)(published *row);          /* in that unit; or */
    evidence (*estimates)(published *row); /* a lower and an upper estimate */
} validate_quantity;

typedef struct {
    const char *path;
    const validate_quantity *quantities;
    size_t count;
} validate_table;

/* A list of tables, each row of them worked out. */
typedef struct {
    const validate_table *tables;
    size_t count;
} validate_list;

validate_list validate_water(void);
validate_list validate_solution(void);
validate_list validate_mixture(void);
validate_list validate_heats(void);
validate_list validate_single_heats(void);
validate_list validate_conduction(void);
validate_list validate_convection(void);
validate_list validate_evaporation(void);
validate_list validate_pool(void);
validate_list validate_whole_bath(void);
validate_list validate_facts(void);

/* A row with its answer. */
typedef struct {
    char group[24], table[32], id[32], what[200], unit[16], kind[12], source[400], work[200], reason[600];
    char status;        /* V read, L evaluated or by a general library, M from memory, - none */
    double value, band; /* printed, and its source's band of that kind */
    evidence ours;
    double deviation, distance; /* support/evidence.h */
    bool pinned, astray;        /* held by tests/published/pins.csv; and outside of that pin */
} validate_row;

typedef struct {
    validate_row *rows; /* owned */
    size_t count;
} validate_answer;

/* collect.c: reads and works out all tables, in order of groups; fails the test where a table cannot be read. */
void validate_collect(validate_answer *answer);
/* The name of a group, in their order; NULL after the last. */
const char *validate_group(size_t index);

/* verdict.c */
bool validate_compared(const validate_row *row);
bool validate_inside(const validate_row *row);
/* Nothing, or what is wrong with the row: outside without a reason, inside with one, no answer, or outside of its pin. */
const char *validate_wrong(const validate_row *row);

/* label.c: at most size characters of the label with the row's fields. */
void validate_label(const char *label, published *row, char *text, size_t size);

/* works.c: the work that a source belongs to, by the longest beginning in tests/published/works.csv; fails the test where none is.
   At most size characters. */
void validate_work_of(const char *source, char *work, size_t size);
/* Whether the row is the first of its work (common practice is none), compared or not, and how many rows are of it. */
bool validate_first_of_work(const validate_answer *answer, size_t at);
size_t validate_rows_of_work(const validate_answer *answer, const char *work);

/* summary.c: a line a group. */
void validate_summary(const validate_answer *answer, FILE *to);

/* text.c, csv.c: the table, to read and to reckon with. */
void validate_text(const validate_answer *answer, FILE *to);
void validate_csv(const validate_answer *answer, FILE *to);

#endif
