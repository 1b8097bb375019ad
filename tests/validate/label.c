/* validate/label.c -- what a row compares, in words. */
#include "validate/validate.h"

/* Writes the field that {column} at *from names, and moves *from behind it; false if it is nan or empty. */
static bool put_field(const char **from, published *row, char **to, const char *end)
{
    char column[64];
    const size_t length = strcspn(*from + 1, "}");
    snprintf(column, sizeof column, "%.*s", (int)length, *from + 1);
    const char *field = published_text(row, column);
    *from += length + 2;
    for (const char *c = field; *c && *to < end; c++)
        *(*to)++ = *c;
    return *field != '\0' && strcmp(field, "nan") != 0;
}

void validate_label(const char *label, published *row, char *text, size_t size)
{
    char *to = text, *part = text, *const end = text + size - 1;
    bool stays = true;
    for (const char *from = label; *from && to < end;) {
        if (*from == ',') {
            to = stays ? to : part;
            part = to;
            stays = true;
        }
        if (*from == '{')
            stays = put_field(&from, row, &to, end) && stays;
        else
            *to++ = *from++;
    }
    *(stays ? to : part) = '\0';
}
