#include "base/field.h"

#include <assert.h>
#include <math.h>
#include <string.h>

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
    switch (f->kind) {
    case FIELD_NUMBER:
        csv_number(to, begun, 9, field_number(f, record));
        break;
    case FIELD_COUNT:
        csv_number(to, begun, 17, (double)*(const size_t *)(const void *)(record + f->where));
        break;
    case FIELD_BOOL:
        csv_text(to, begun, *(const bool *)(record + f->where) ? "1" : "0");
        break;
    case FIELD_TEXT:
    case FIELD_CHARS:
    case FIELD_FIXED:
    case FIELD_WORD:
        csv_text(to, begun, field_word(f, record));
        break;
    case FIELD_NUMBERS:
    case FIELD_OBJECT:
    case FIELD_PART:
    case FIELD_LIST:
    case FIELD_ARRAY:
    case FIELD_MAP:
    case FIELD_END:
        assert(false); /* no cell holds these */
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
