#include "manual/expects.h"

#include <string.h>

expects expects_of(const char *value)
{
    if (value == NULL)
        return EXPECTS_NOTHING;
    if (strchr(value, '|') != NULL)
        return EXPECTS_WORDS;
    return strstr(value, "FILE") != NULL ? EXPECTS_FILE : EXPECTS_TEXT;
}

void expects_words(FILE *to, const char *value)
{
    for (; *value != '\0'; value++)
        fputc(*value == '|' ? ' ' : *value, to);
}
