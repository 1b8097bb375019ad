/* json_table.h -- a record as JSON by a table: a row a member. */
#ifndef BASE_JSON_TABLE_H
#define BASE_JSON_TABLE_H

#include "base/json.h"

typedef enum {
    JSON_END,    /* after the last row */
    JSON_NUMBER, /* double */
    JSON_COUNT,  /* size_t */
    JSON_BOOL,
    JSON_TEXT,   /* const char * */
    JSON_WORD,   /* an enum; its word in `words`, which may be NULL */
    JSON_OBJECT, /* a record inside this one: `inside` */
    JSON_LIST,   /* a pointer to `count` records of `size` bytes */
    JSON_ROW,    /* the same as an array inside the record */
    JSON_BY      /* what no member says: `by` writes it from the record */
} json_kind;

typedef struct json_row {
    json_kind kind;
    const char *key;
    size_t where; /* in the record */
    const struct json_row *inside;
    size_t count, size; /* count: where it stands */
    const char *const *words;
    void (*by)(json *j, const char *key, const void *record);
} json_row;

/* clang-format off */
#define JSON_MEMBER(kind, key, record, member) {kind, key, offsetof(record, member), NULL, 0, 0, NULL, NULL}
/* clang-format on */
/* clang-format off */
#define JSON_INSIDE(key, record, member, rows) {JSON_OBJECT, key, offsetof(record, member), rows, 0, 0, NULL, NULL}
/* clang-format on */
/* clang-format off */
#define JSON_ITEMS(kind, key, record, list, count, item, rows) \
    {kind, key, offsetof(record, list), rows, offsetof(record, count), sizeof(item), NULL, NULL}
/* clang-format on */
/* clang-format off */
#define JSON_WORDS(key, record, member, list) {JSON_WORD, key, offsetof(record, member), NULL, 0, 0, list, NULL}
/* clang-format on */
/* clang-format off */
#define JSON_GIVEN(key, function) {JSON_BY, key, 0, NULL, 0, 0, NULL, function}
/* clang-format on */
/* clang-format off */
#define JSON_LAST {JSON_END, NULL, 0, NULL, 0, 0, NULL, NULL}
/* clang-format on */

/* Of the record that RECORD is defined as; SAME: a double whose member is called as its key. */
#define SAME(member) JSON_MEMBER(JSON_NUMBER, #member, RECORD, member)
#define NUMBER(key, member) JSON_MEMBER(JSON_NUMBER, key, RECORD, member)
#define COUNT(key, member) JSON_MEMBER(JSON_COUNT, key, RECORD, member)
#define BOOL(key, member) JSON_MEMBER(JSON_BOOL, key, RECORD, member)
#define TEXT(key, member) JSON_MEMBER(JSON_TEXT, key, RECORD, member)

void json_members(json *j, const json_row rows[], const void *record);
void json_record(json *j, const char *key, const json_row rows[], const void *record); /* an object of its own */

#endif
