/* schema.c -- JSON Schema [draft 2020-12] of what a command writes with --json, from the tables it is written by. */

#include "base/program.h"
#include "manual/pages.h"

static void description(json *j, const field *f)
{
    char text[400];
    const char *si_unit = f->kind == FIELD_NUMBER ? field_unit(f->key) : "";
    if (f->meaning == NULL)
        return;
    snprintf(text, sizeof text, "%s%s%s", f->meaning, si_unit[0] != '\0' ? "; " : "", si_unit);
    json_text(j, "description", text);
}

static void type_of(json *j, const char *type, bool may_be_null)
{
    if (!may_be_null) {
        json_text(j, "type", type);
        return;
    }
    json_list(j, "type");
    json_text(j, NULL, type);
    json_text(j, NULL, "null");
    json_close(j);
}

static void words_of(json *j, const field *f)
{
    bool missing = false;
    json_list(j, "enum");
    for (size_t i = 0; i < f->count; i++) {
        missing = missing || f->words[i] == NULL;
        if (f->words[i] != NULL)
            json_text(j, NULL, f->words[i]);
    }
    if (missing)
        json_text(j, NULL, NULL);
    json_close(j);
}

static void object_of(json *j, const field *fields, bool may_be_null);

static void items_of(json *j, const char *key, const field *fields)
{
    json_object(j, key);
    object_of(j, fields, false);
    json_close(j);
}

/* What JSON calls a value, and whether null may stand for it. */
static const struct {
    const char *type;
    bool may_be_null;
} types[] = {[FIELD_NUMBER] = {"number", true},  [FIELD_COUNT] = {"integer", false}, [FIELD_BOOL] = {"boolean", false},
             [FIELD_TEXT] = {"string", true},    [FIELD_CHARS] = {"string", false},  [FIELD_FIXED] = {"string", false},
             [FIELD_NUMBERS] = {"array", false}, [FIELD_LIST] = {"array", false},    [FIELD_ARRAY] = {"array", false},
             [FIELD_MAP] = {"object", false}};

static void value_of(json *j, const field *f)
{
    if (f->kind == FIELD_OBJECT)
        object_of(j, f->inside, f->when != NULL);
    else if (f->kind == FIELD_WORD)
        words_of(j, f);
    else
        type_of(j, types[f->kind].type, types[f->kind].may_be_null);
    if (f->kind == FIELD_LIST || f->kind == FIELD_ARRAY)
        items_of(j, "items", f->inside);
    if (f->kind == FIELD_MAP)
        items_of(j, "additionalProperties", f->inside);
    if (f->kind == FIELD_NUMBERS) {
        json_object(j, "items");
        type_of(j, "number", true);
        json_close(j);
    }
}

static void properties(json *j, const field *f)
{
    for (; f->kind != FIELD_END; f++) {
        if (f->kind == FIELD_PART)
            properties(j, f->inside);
        if (f->key == NULL)
            continue;
        json_object(j, f->key);
        description(j, f);
        value_of(j, f);
        json_close(j);
    }
}

/* Members of a part are there together or not at all; only that they may be missing is said. */
static void object_of(json *j, const field *fields, bool may_be_null)
{
    const field *others = NULL;
    type_of(j, "object", may_be_null);
    json_object(j, "properties");
    properties(j, fields);
    json_close(j);
    json_list(j, "required");
    for (const field *f = fields; f->kind != FIELD_END; f++) {
        if (f->key != NULL)
            json_text(j, NULL, f->key);
        else if (f->kind == FIELD_MAP)
            others = f;
    }
    json_close(j);
    if (others != NULL)
        items_of(j, "additionalProperties", others->inside);
    else
        json_bool(j, "additionalProperties", false);
}

void schema_of(const command *c, FILE *to)
{
    json j = json_to(to);
    char title[80];
    snprintf(title, sizeof title, PROGRAM_NAME " %s --json", c->name);
    json_object(&j, NULL);
    json_text(&j, "$schema", "https://json-schema.org/draft/2020-12/schema");
    json_text(&j, "title", title);
    json_list(&j, "anyOf");
    for (const document *d = c->documents; d->option != NULL; d++) {
        if (d->csv)
            continue;
        json_object(&j, NULL);
        json_text(&j, "title", d->option);
        json_text(&j, "description", d->meaning);
        object_of(&j, d->fields, false);
        json_close(&j);
    }
    json_close(&j);
    json_close(&j);
}
