#include "base/json_table.h"

#include <string.h>

static void items(json *j, const json_row *r, const char *first, size_t count)
{
    json_list(j, r->key);
    for (size_t i = 0; i < count; i++)
        json_record(j, NULL, r->inside, first + i * r->size);
    json_close(j);
}

static const void *pointer_at(const void *at)
{
    const void *p;
    memcpy(&p, at, sizeof p);
    return p;
}

static unsigned enum_at(const void *at)
{
    unsigned x;
    memcpy(&x, at, sizeof x);
    return x;
}

static void member(json *j, const json_row *r, const char *record)
{
    const void *at = record + r->where;
    switch (r->kind) {
    case JSON_NUMBER:
        json_number(j, r->key, *(const double *)at);
        break;
    case JSON_COUNT:
        json_number(j, r->key, (double)*(const size_t *)at);
        break;
    case JSON_BOOL:
        json_bool(j, r->key, *(const bool *)at);
        break;
    case JSON_TEXT:
        json_text(j, r->key, pointer_at(at));
        break;
    case JSON_WORD:
        json_text(j, r->key, r->words[enum_at(at)]);
        break;
    case JSON_OBJECT:
        json_record(j, r->key, r->inside, at);
        break;
    case JSON_LIST:
        items(j, r, pointer_at(at), *(const size_t *)(const void *)(record + r->count));
        break;
    case JSON_ROW:
        items(j, r, at, *(const size_t *)(const void *)(record + r->count));
        break;
    case JSON_BY:
        r->by(j, r->key, record);
        break;
    case JSON_END:
        break;
    }
}

void json_members(json *j, const json_row rows[], const void *record)
{
    for (; rows->kind != JSON_END; rows++)
        member(j, rows, record);
}

void json_record(json *j, const char *key, const json_row rows[], const void *record)
{
    json_object(j, key);
    json_members(j, rows, record);
    json_close(j);
}
