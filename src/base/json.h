/* base/json.h -- writes JSON [RFC 8259], indented. Keys are NULL inside a list. */
#ifndef BASE_JSON_H
#define BASE_JSON_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#define JSON_DEPTH 16

typedef struct {
    FILE *to;
    int depth;
    bool begun[JSON_DEPTH]; /* something stands already in this object or list */
    char closes[JSON_DEPTH];
} json;

json json_to(FILE *to);
void json_object(json *j, const char *key);
void json_list(json *j, const char *key);
void json_close(json *j); /* the innermost object or list; a line's end after the outermost */

void json_number(json *j, const char *key, double x); /* nine significant digits; null when it is not finite */

/* NULL: null. Bytes that are not UTF-8 become U+FFFD; what is not seen stands by its number. */
void json_text(json *j, const char *key, const char *text);
void json_bool(json *j, const char *key, bool is);

#endif
