/* replay/thin.h -- of a table of numbers over time only the rows that must be kept so that straight lines between them miss none
   of those left out by more than is seen; and a moment between them. */
#ifndef REPLAY_THIN_H
#define REPLAY_THIN_H

#include <stdbool.h>
#include <stddef.h>

/* A quantity of a row, a double: how far a left-out value may lie off, in its unit or as a share of itself, whichever is more. */
typedef struct {
    size_t where;
    double within, share;
} thin_column;

typedef struct {
    const void *rows; /* `size` bytes each; times do not fall, and every number is finite */
    size_t count, size;
    size_t time; /* where the row's time stands */
    const thin_column *columns;
    size_t columns_count; /* at most THIN_COLUMNS */
    double slack;         /* all bounds times this: 1 */
} thin_table;

#define THIN_COLUMNS 16

/* Marks more rows as kept, besides those marked already; first and last always. One pass: from the last row kept on each column
   has a cone of slopes that miss none of the rows since. The bound holds at every row. Rows at one time are both kept where
   they differ. */
void thin_mark(const thin_table *t, bool *kept);

/* The row as it is at a time: its columns on the straight lines between the rows around, or as the first or last has them; all else as
   in the last row not after it. Without rows it is left as it is. */
void thin_at(const thin_table *t, double time, void *row);

#endif
