/* base/field.h -- a record for other programs as a table, a row a member: its key with the unit, where it stands, what it
   means. JSON, CSV, the manual and the schemas are all written from the same rows. */
#ifndef BASE_FIELD_H
#define BASE_FIELD_H

#include "base/json.h"

typedef enum {
    FIELD_END,     /* after the last row */
    FIELD_NUMBER,  /* double, or what `number` makes of the record; when it is not finite: null, in CSV empty */
    FIELD_COUNT,   /* size_t */
    FIELD_BOOL,    /* in CSV 1 or 0 */
    FIELD_TEXT,    /* const char *; NULL: null */
    FIELD_CHARS,   /* an array of char */
    FIELD_FIXED,   /* the same text in every record: the only one of `words` */
    FIELD_WORD,    /* an enum that counts the `count` words of `words`; a word may be NULL: null */
    FIELD_NUMBERS, /* an array of doubles */
    FIELD_OBJECT,  /* a record inside this one: `inside`; null where `when` denies it */
    FIELD_PART,    /* members of this very object; left out where `when` denies them */
    FIELD_LIST,    /* a pointer to records of `size` bytes */
    FIELD_ARRAY,   /* the same as an array inside the record */
    FIELD_MAP      /* objects of a kind whose keys are not known beforehand; without a key: beside the other members */
} field_kind;

typedef struct field {
    field_kind kind;
    const char *key;     /* ends in the SI unit; a number without one is a ratio */
    const char *meaning; /* a few words, no full stop */
    size_t where;        /* in the record */
    const struct field *inside;
    size_t count, size; /* of a list, array or numbers: where the size_t stands that counts them */
    const char *const *words;
    double (*number)(const void *record);
    bool (*when)(const void *inside); /* NULL: always */
    void (*by)(json *j, const char *key,
               const void *record); /* writes what no member says; looks like `kind` says. JSON only */
} field;

/* Rows of the record that RECORD is defined as. SAME: a double whose member is called as its key. */
/* clang-format off */
#define FIELD_OF(form, name, member, says) .kind = form, .key = name, .where = offsetof(RECORD, member), .meaning = says
#define SAME(member, says) {FIELD_OF(FIELD_NUMBER, #member, member, says)}
#define NUMBER(name, member, says) {FIELD_OF(FIELD_NUMBER, name, member, says)}
#define COUNT(name, member, says) {FIELD_OF(FIELD_COUNT, name, member, says)}
#define BOOL(name, member, says) {FIELD_OF(FIELD_BOOL, name, member, says)}
#define TEXT(name, member, says) {FIELD_OF(FIELD_TEXT, name, member, says)}
#define CHARS(name, member, says) {FIELD_OF(FIELD_CHARS, name, member, says)}
#define WORD(name, member, list, says) \
    {FIELD_OF(FIELD_WORD, name, member, says), .words = list, .count = sizeof list / sizeof list[0]}
#define OBJECT(name, member, rows, says) {FIELD_OF(FIELD_OBJECT, name, member, says), .inside = rows}
#define OBJECT_IF(name, member, rows, test, says) {FIELD_OF(FIELD_OBJECT, name, member, says), .inside = rows, .when = test}
#define LIST(name, list, counted, rows, says) \
    {FIELD_OF(FIELD_LIST, name, list, says), .inside = rows, .count = offsetof(RECORD, counted), \
     .size = sizeof *((RECORD *)0)->list}
#define ARRAY(name, list, counted, rows, says) \
    {FIELD_OF(FIELD_ARRAY, name, list, says), .inside = rows, .count = offsetof(RECORD, counted), \
     .size = sizeof ((RECORD *)0)->list[0]}
#define NUMBERS(name, list, counted, says) {FIELD_OF(FIELD_NUMBERS, name, list, says), .count = offsetof(RECORD, counted)}
/* Of a member that is boil_odds, "odds.", or of a record that is. */
#define ODDS(member) \
    NUMBER("chance", member chance, "share of the draws"), \
    NUMBER("low", member low, "low end of its 95 % interval"), \
    NUMBER("high", member high, "high end of its 95 % interval"), \
    COUNT("count", member count, "draws made")
/* Of the record as a whole. */
#define FIXED(name, text, says) {.kind = FIELD_FIXED, .key = name, .words = text, .count = 1, .meaning = says}
#define WORKED_OUT(name, function, says) {.kind = FIELD_NUMBER, .key = name, .number = function, .meaning = says}
#define GROUP(name, rows, says) {.kind = FIELD_OBJECT, .key = name, .inside = rows, .meaning = says}
#define PART_IF(rows, test) {.kind = FIELD_PART, .inside = rows, .when = test}
#define GIVEN(form, name, rows, function, says) {.kind = form, .key = name, .inside = rows, .by = function, .meaning = says}
#define FIELDS_END {.kind = FIELD_END}
/* Functions that rows name, of a record `r` of that type: what GIVEN writes (json_text, json_bool, json_number), and what
   WORKED_OUT or a `when` is told. */
#define WRITES(name, type, kind, value) \
    static void name(json *j, const char *member, const void *record) \
    { \
        const type *r = record; \
        json_##kind(j, member, value); \
    }
#define TELLS(result, name, type, value) \
    static result name(const void *record) \
    { \
        const type *r = record; \
        return value; \
    }
/* clang-format on */

/* What a command writes, under what option. */
typedef struct document {
    const char *option; /* "--json", "--csv, with --table"; NULL: after the last */
    const char *meaning;
    const field *fields; /* of the document, or of a line of CSV */
    bool csv;
} document;

const char *field_unit(const char *key); /* by how it ends: "kg/m3"; "" for a ratio */

void json_record(json *j, const char *key, const field fields[], const void *record); /* an object of its own */
void json_records(json *j, const char *key, const field fields[], const void *first, size_t count, size_t size); /* a list */
void json_document(const field fields[], const void *record, FILE *to);

/* Records as CSV [RFC 4180] by a table of their fields: a header line of keys, then a line a record. */

/* `begun`: another cell stands before it on its line. */
void csv_text(FILE *to, bool begun, const char *text);       /* quoted where it must be; NULL: empty */
void csv_number(FILE *to, bool begun, int digits, double x); /* empty when it is not finite */

/* Fields that are numbers, counts, bools and texts; nothing inside. */
void csv_header(FILE *to, const field fields[]);
void csv_record(FILE *to, const field fields[], const void *record);
void csv_document(FILE *to, const field fields[], const void *first, size_t count, size_t size);

#endif
