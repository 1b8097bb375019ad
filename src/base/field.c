#include "base/field.h"

#include <assert.h>
#include <math.h>
#include <string.h>

/* The longer ending before the shorter. */
static const struct {
    const char *ending, *unit;
} units[] = {{"_kg_m3", "kg/m3"},
             {"_J_kgK", "J/(kg K)"},
             {"_W_m3", "W/m3"},
             {"_m3_s", "m3/s"},
             {"_kg_s", "kg/s"},
             {"_J_kg", "J/kg"},
             {"_W_m2K", "W/(m2 K)"},
             {"_m3", "m3"},
             {"_kg", "kg"},
             {"_Pa", "Pa"},
             {"_K", "K"},
             {"_s", "s"},
             {"_m", "m"},
             {"_J", "J"},
             {"_W", "W"}};

const char *field_unit(const char *key)
{
    size_t length = strlen(key);
    for (size_t i = 0; i < sizeof units / sizeof units[0]; i++) {
        size_t ending = strlen(units[i].ending);
        if (length > ending && strcmp(key + length - ending, units[i].ending) == 0)
            return units[i].unit;
    }
    return "";
}

static const char *pointer_at(const void *at)
{
    const char *p;
    memcpy(&p, at, sizeof p);
    return p;
}

static unsigned enum_at(const void *at)
{
    unsigned x;
    memcpy(&x, at, sizeof x);
    return x;
}

static bool is_words(const field *f)
{
    return f->kind == FIELD_WORD || f->kind == FIELD_TEXT || f->kind == FIELD_CHARS || f->kind == FIELD_FIXED;
}

static const char *word(const field *f, const void *record)
{
    const char *at = (const char *)record + f->where;
    return f->kind == FIELD_WORD    ? f->words[enum_at(at)]
           : f->kind == FIELD_FIXED ? f->words[0]
           : f->kind == FIELD_CHARS ? at
                                    : pointer_at(at);
}

static double number_of(const field *f, const void *record)
{
    double x;
    if (f->number != NULL)
        return f->number(record);
    memcpy(&x, (const char *)record + f->where, sizeof x);
    return x;
}

static size_t count_of(const field *f, const char *record)
{
    size_t n;
    memcpy(&n, record + f->count, sizeof n);
    return n;
}

static const void *first_of(const field *f, const char *record)
{
    const void *p = record + f->where;
    if (f->kind == FIELD_LIST)
        memcpy(&p, record + f->where, sizeof p);
    return p;
}

static void numbers(json *j, const field *f, const char *record)
{
    const double *x = first_of(f, record);
    json_list(j, f->key);
    for (size_t i = 0; i < count_of(f, record); i++)
        json_number(j, NULL, x[i]);
    json_close(j);
}

static void members(json *j, const field fields[], const void *record);

static void inside(json *j, const field *f, const char *record)
{
    bool there = f->when == NULL || f->when(record + f->where);
    if (f->kind == FIELD_PART && there)
        members(j, f->inside, record + f->where);
    else if (f->kind == FIELD_OBJECT && there)
        json_record(j, f->key, f->inside, record + f->where);
    else if (f->kind == FIELD_OBJECT)
        json_text(j, f->key, NULL);
}

static void member(json *j, const field *f, const char *record)
{
    const char *at = record + f->where;
    if (f->kind == FIELD_NUMBER)
        json_number(j, f->key, number_of(f, record));
    else if (f->kind == FIELD_COUNT)
        json_number(j, f->key, (double)*(const size_t *)(const void *)at);
    else if (f->kind == FIELD_BOOL)
        json_bool(j, f->key, *(const bool *)at);
    else if (is_words(f))
        json_text(j, f->key, word(f, record));
    else if (f->kind == FIELD_NUMBERS)
        numbers(j, f, record);
    else if (f->kind == FIELD_LIST || f->kind == FIELD_ARRAY)
        json_records(j, f->key, f->inside, first_of(f, record), count_of(f, record), f->size);
    else if (f->kind != FIELD_MAP) /* that is written by its own function */
        inside(j, f, record);
}

static void members(json *j, const field fields[], const void *record)
{
    for (; fields->kind != FIELD_END; fields++)
        if (fields->by != NULL)
            fields->by(j, fields->key, record);
        else
            member(j, fields, record);
}

void json_record(json *j, const char *key, const field fields[], const void *record)
{
    json_object(j, key);
    members(j, fields, record);
    json_close(j);
}

void json_records(json *j, const char *key, const field fields[], const void *first, size_t count, size_t size)
{
    json_list(j, key);
    for (size_t i = 0; i < count; i++)
        json_record(j, NULL, fields, (const char *)first + i * size);
    json_close(j);
}

void json_document(const field fields[], const void *record, FILE *to)
{
    json j = json_to(to);
    json_record(&j, NULL, fields, record);
}

void csv_text(FILE *to, bool begun, const char *text)
{
    if (begun)
        fputc(',', to);
    if (text == NULL)
        return;
    bool quoted = strpbrk(text, "\",\r\n") != NULL || text[0] == ' ' || (text[0] != '\0' && text[strlen(text) - 1] == ' ');
    if (quoted)
        fputc('"', to);
    for (; *text != '\0'; text++) {
        if (*text == '"')
            fputc('"', to);
        fputc(*text, to);
    }
    if (quoted)
        fputc('"', to);
}

void csv_number(FILE *to, bool begun, int digits, double x)
{
    if (begun)
        fputc(',', to);
    if (isfinite(x))
        fprintf(to, "%.*g", digits, x == 0 ? 0.0 : x); /* no minus zero */
}

void csv_header(FILE *to, const field fields[])
{
    for (const field *f = fields; f->kind != FIELD_END; f++)
        csv_text(to, f != fields, f->key);
    fputc('\n', to);
}

static void cell(FILE *to, bool begun, const field *f, const char *record)
{
    const char *at = record + f->where;
    if (f->kind == FIELD_NUMBER)
        csv_number(to, begun, 9, number_of(f, record));
    else if (f->kind == FIELD_COUNT)
        csv_number(to, begun, 17, (double)*(const size_t *)(const void *)at);
    else if (f->kind == FIELD_BOOL)
        csv_text(to, begun, *(const bool *)at ? "1" : "0");
    else {
        assert(is_words(f)); /* no cell holds the others */
        csv_text(to, begun, word(f, record));
    }
}

void csv_record(FILE *to, const field fields[], const void *record)
{
    for (const field *f = fields; f->kind != FIELD_END; f++)
        cell(to, f != fields, f, record);
    fputc('\n', to);
}

void csv_document(FILE *to, const field fields[], const void *first, size_t count, size_t size)
{
    csv_header(to, fields);
    for (size_t i = 0; i < count; i++)
        csv_record(to, fields, (const char *)first + i * size);
}
