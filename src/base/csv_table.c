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
    const char *at = record + f->where;
    if (f->kind == FIELD_NUMBER)
        csv_number(to, begun, 9, field_number(f, record));
    else if (f->kind == FIELD_COUNT)
        csv_number(to, begun, 17, (double)*(const size_t *)(const void *)at);
    else if (f->kind == FIELD_BOOL)
        csv_text(to, begun, *(const bool *)at ? "1" : "0");
    else {
        assert(field_is_words(f)); /* no cell holds the others */
        csv_text(to, begun, field_word(f, record));
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
