#include "base/json.h"

#include <assert.h>
#include <math.h>

#include "base/text.h"

json json_to(FILE *to)
{
    return (json){.to = to};
}

static void escaped(FILE *to, const char *text)
{
    fputc('"', to);
    while (*text != '\0') {
        size_t length = text_character(text);
        unsigned char c = (unsigned char)*text;
        if (length == 0)
            fputs("\\ufffd", to);
        else if (c == '"' || c == '\\')
            fprintf(to, "\\%c", c);
        else if (c < 0x20 || c == 0x7F)
            fprintf(to, "\\u%04x", c);
        else
            fwrite(text, 1, length, to);
        text += length > 0 ? length : 1;
    }
    fputc('"', to);
}

/* Comma, new line and key before an item. */
static void next(json *j, const char *key)
{
    if (j->depth == 0)
        return;
    fprintf(j->to, "%s\n%*s", j->begun[j->depth - 1] ? "," : "", 2 * j->depth, "");
    j->begun[j->depth - 1] = true;
    if (key != NULL) {
        escaped(j->to, key);
        fputs(": ", j->to);
    }
}

static void open(json *j, const char *key, char opens, char closes)
{
    assert(j->depth < JSON_DEPTH);
    next(j, key);
    fputc(opens, j->to);
    j->begun[j->depth] = false;
    j->closes[j->depth++] = closes;
}

void json_object(json *j, const char *key)
{
    open(j, key, '{', '}');
}

void json_list(json *j, const char *key)
{
    open(j, key, '[', ']');
}

void json_close(json *j)
{
    assert(j->depth > 0);
    j->depth--;
    if (j->begun[j->depth])
        fprintf(j->to, "\n%*s", 2 * j->depth, "");
    fputc(j->closes[j->depth], j->to);
    if (j->depth == 0)
        fputc('\n', j->to);
}

void json_number(json *j, const char *key, double x)
{
    next(j, key);
    if (isfinite(x))
        fprintf(j->to, "%.9g", x == 0 ? 0.0 : x); /* no minus zero */
    else
        fputs("null", j->to);
}

void json_text(json *j, const char *key, const char *text)
{
    next(j, key);
    if (text != NULL)
        escaped(j->to, text);
    else
        fputs("null", j->to);
}

void json_bool(json *j, const char *key, bool is)
{
    next(j, key);
    fputs(is ? "true" : "false", j->to);
}
