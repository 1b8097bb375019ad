/* reading/csv_cells.h -- rows of a CSV file cell by cell: for what people write or export, a run sheet or a log. A cell may be
   quoted; no word of ours holds a quote, so one that is doubled inside a cell is left for its reader to refuse. */
#ifndef READING_CSV_CELLS_H
#define READING_CSV_CELLS_H

#include <stdbool.h>

#include "reading/cursor.h"

/* A line without outer blanks. */
cursor csv_row(const source *s, size_t line, messages *m);
bool csv_is_blank(const cursor *row); /* nothing, or a comment: begins with "#" */

/* The cell at the cursor, without outer blanks and quotes; the cursor then stands at the next, or at its end. False, with a
   message, when a quote does not end before a comma. */
bool csv_cell(cursor *row, cursor *cell);

#endif
