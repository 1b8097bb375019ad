#include "base/field.h"

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

bool field_is_words(const field *f)
{
    return f->kind == FIELD_WORD || f->kind == FIELD_TEXT || f->kind == FIELD_CHARS || f->kind == FIELD_FIXED;
}

const char *field_word(const field *f, const void *record)
{
    const char *at = (const char *)record + f->where;
    return f->kind == FIELD_WORD    ? f->words[enum_at(at)]
           : f->kind == FIELD_FIXED ? f->words[0]
           : f->kind == FIELD_CHARS ? at
                                    : pointer_at(at);
}

double field_number(const field *f, const void *record)
{
    double x;
    if (f->number != NULL)
        return f->number(record);
    memcpy(&x, (const char *)record + f->where, sizeof x);
    return x;
}
