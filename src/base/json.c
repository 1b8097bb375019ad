#include "base/json.h"

#include <assert.h>
#include <math.h>

#include "base/text.h"

json json_to(FILE *to)
{
    return (json){.to = to};
}

/* What is not seen, or what a terminal obeys, by its number; one beyond the first 65536 is two of these. */
static bool by_number(FILE *to, const char *at, size_t length)
{
    unsigned long code = text_unseen(at, length);
    if (code == 0 && text_is_control(at, length))
        code = (unsigned char)at[length - 1];
    if (code > 0xFFFF)
        fprintf(to, "\\u%04lx\\u%04lx", 0xD800 + ((code - 0x10000) >> 10), 0xDC00 + ((code - 0x10000) & 0x3FF));
    else if (code > 0)
        fprintf(to, "\\u%04lx", code);
    return code > 0;
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
        else if (!by_number(to, text, length))
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
