#include "base/field.h"

#include <string.h>

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

static void inside(json *j, const field *f, const char *record)
{
    bool there = f->when == NULL || f->when(record + f->where);
    if (f->kind == FIELD_PART && there)
        json_members(j, f->inside, record + f->where);
    else if (f->kind == FIELD_OBJECT && there)
        json_record(j, f->key, f->inside, record + f->where);
    else if (f->kind == FIELD_OBJECT)
        json_null(j, f->key);
}

static void member(json *j, const field *f, const char *record)
{
    const char *at = record + f->where;
    if (f->kind == FIELD_NUMBER)
        json_number(j, f->key, field_number(f, record));
    else if (f->kind == FIELD_COUNT)
        json_number(j, f->key, (double)*(const size_t *)(const void *)at);
    else if (f->kind == FIELD_BOOL)
        json_bool(j, f->key, *(const bool *)at);
    else if (field_is_words(f))
        json_text(j, f->key, field_word(f, record));
    else if (f->kind == FIELD_NUMBERS)
        numbers(j, f, record);
    else if (f->kind == FIELD_LIST || f->kind == FIELD_ARRAY)
        json_records(j, f->key, f->inside, first_of(f, record), count_of(f, record), f->size);
    else if (f->kind != FIELD_MAP) /* that is written by its own function */
        inside(j, f, record);
}

void json_members(json *j, const field fields[], const void *record)
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
    json_members(j, fields, record);
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
