#include "reading/reword.h"

#include <string.h>

bool reword_begin(reword *w, const cursor *c)
{
    size_t length = (size_t)(c->end - c->at);
    if (length > REWORD_MAX)
        return false;
    w->typed = *c;
    w->length = length;
    w->changed = false;
    w->first = 0;
    memcpy(w->text, c->at, length);
    w->text[length] = '\0';
    for (size_t i = 0; i <= length; i++)
        w->from[i] = i;
    return true;
}

void reword_replace(reword *w, size_t at, size_t length, const char *with)
{
    size_t add = strlen(with), tail = w->length - at - length, place = w->from[at];
    if (w->length - length + add > REWORD_MAX)
        return;
    memmove(w->text + at + add, w->text + at + length, tail + 1);
    memmove(w->from + at + add, w->from + at + length, (tail + 1) * sizeof w->from[0]);
    memcpy(w->text + at, with, add);
    for (size_t i = 0; i < add; i++)
        w->from[at + i] = place;
    if (!w->changed || place < w->first)
        w->first = place;
    w->length += add - length;
    w->changed = true;
}

size_t reword_word(const reword *w, size_t *at)
{
    const char *end = w->text + w->length, *start = words_skip(w->text + *at, end), *stop = start;
    *at = (size_t)(start - w->text);
    if (start < end && *start == ',')
        return 1;
    while (stop < end && *stop != ',' && words_blank(stop, end) == 0)
        stop++;
    return (size_t)(stop - start);
}

bool reword_number_at(const reword *w, size_t at)
{
    const char *end = w->text + w->length, *start = words_skip(w->text + at, end);
    return start < end && *start >= '0' && *start <= '9';
}

void reword_finish(reword *w, cursor *c)
{
    if (!w->changed)
        return;
    message_reading r = {w->text, w->length, w->typed.at, w->from};
    const char *text = messages_keep_reading(c->messages, &r);
    if (text == NULL)
        return;
    messages_remark(c->messages, c->source, c->line, w->typed.at + w->first, "read as '%s'", text);
    c->at = text;
    c->end = text + w->length;
}
