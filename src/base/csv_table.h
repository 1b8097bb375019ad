/* base/csv_table.h -- records as CSV [RFC 4180] by a table of their fields: a header line of keys, then a line a record. */
#ifndef BASE_CSV_TABLE_H
#define BASE_CSV_TABLE_H

#include <stdio.h>

#include "base/field.h"

/* `begun`: another cell stands before it on its line. */
void csv_text(FILE *to, bool begun, const char *text);       /* quoted where it must be; NULL: empty */
void csv_number(FILE *to, bool begun, int digits, double x); /* empty when it is not finite */

/* Fields that are numbers, counts, bools and texts; nothing inside. */
void csv_header(FILE *to, const field fields[]);
void csv_record(FILE *to, const field fields[], const void *record);
void csv_document(FILE *to, const field fields[], const void *first, size_t count, size_t size);

#endif
