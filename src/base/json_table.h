/* base/json_table.h -- a record as JSON by a table of its fields. */
#ifndef BASE_JSON_TABLE_H
#define BASE_JSON_TABLE_H

#include "base/field.h"

void json_members(json *j, const field fields[], const void *record);
void json_record(json *j, const char *key, const field fields[], const void *record); /* an object of its own */
void json_records(json *j, const char *key, const field fields[], const void *first, size_t count, size_t size); /* a list */
void json_document(const field fields[], const void *record, FILE *to);

#endif
