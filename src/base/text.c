#include "base/text.h"

#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#define CELL_WIDTH_MAX 100

/* Well-formed UTF-8, Unicode table 3-7. */
size_t text_character(const char *at)
{
    const unsigned char *b = (const unsigned char *)at;
    if (b[0] < 0x80)
        return b[0] != 0;
    size_t length = b[0] >= 0xC2 && b[0] <= 0xDF ? 2 : b[0] >= 0xE0 && b[0] <= 0xEF ? 3 : b[0] >= 0xF0 && b[0] <= 0xF4 ? 4 : 0;
    for (size_t i = 1; i < length; i++)
        if ((b[i] & 0xC0) != 0x80)
            return 0;
    bool overlong = (b[0] == 0xE0 && b[1] < 0xA0) || (b[0] == 0xF0 && b[1] < 0x90);
    bool beyond = (b[0] == 0xED && b[1] > 0x9F) || (b[0] == 0xF4 && b[1] > 0x8F);
    return overlong || beyond ? 0 : length;
}

/* C0 and C1 controls and DEL. */
static bool is_control(const char *at, size_t length)
{
    unsigned char first = (unsigned char)at[0];
    return (length == 1 && (first < 0x20 || first == 0x7F)) || (length == 2 && first == 0xC2 && (unsigned char)at[1] < 0xA0);
}

/* Copies one character, printable, and moves on; how many bytes were written. */
static size_t copy_character(char *to, const char **at)
{
    size_t length = text_character(*at);
    size_t passed = length > 0 ? length : 1;
    bool shown = length > 0 && !is_control(*at, length);
    if (shown)
        memcpy(to, *at, length);
    else
        *to = '?';
    *at += passed;
    return shown ? length : 1;
}

static size_t columns(const char *text)
{
    char ignored[4];
    size_t n = 0;
    while (*text != '\0') {
        copy_character(ignored, &text);
        n++;
    }
    return n;
}

text_cell text_plain(const char *text)
{
    text_cell c;
    size_t n = 0;
    while (*text != '\0' && n <= sizeof c.text - 5)
        n += copy_character(c.text + n, &text);
    c.text[n] = '\0';
    return c;
}

/* The last comma or blank in the second half of a text, or its end. */
static size_t natural_end(const char *text, size_t length)
{
    for (size_t i = length; i > length / 2; i--)
        if (text[i - 1] == ',')
            return i - 1;
    for (size_t i = length; i > length / 2; i--)
        if (text[i - 1] == ' ')
            return i - 1;
    return length;
}

text_cell text_fitted(const char *text, size_t width)
{
    text_cell c;
    if (width > CELL_WIDTH_MAX)
        width = CELL_WIDTH_MAX;
    bool cut = columns(text) > width;
    size_t n = 0, most = cut ? width - 3 : width, used = 0;
    for (; *text != '\0' && used < most; used++)
        n += copy_character(c.text + n, &text);
    if (cut) {
        n = natural_end(c.text, n);
        memcpy(c.text + n, "...", 3);
        n += 3;
    }
    c.text[n] = '\0';
    for (used = columns(c.text); used < width; used++)
        c.text[n++] = ' ';
    c.text[n] = '\0';
    return c;
}

/* Bytes of the longest part that fits and ends before a blank; a single long word is not broken. */
static size_t line_length(const char *text, size_t capacity)
{
    size_t best = 0;
    for (size_t i = 0;; i++) {
        if (text[i] != '\0' && text[i] != ' ')
            continue;
        if (best > 0 && i > capacity)
            return best;
        best = i;
        if (text[i] == '\0' || i > capacity)
            return best;
    }
}

void text_wrapped(FILE *to, const char *text, int used, int indent, int width)
{
    do {
        int blanks = used < indent ? indent - used : used > 0 ? 1 : 0;
        int start = used + blanks;
        size_t n = line_length(text, start < width ? (size_t)(width - start) : 0);
        fprintf(to, "%*s%.*s\n", n > 0 ? blanks : 0, "", (int)n, text);
        text += n;
        text += strspn(text, " ");
        used = 0;
    } while (*text != '\0');
}

void text_line(FILE *to, const char *line)
{
    size_t length = strlen(line);
    while (length > 0 && line[length - 1] == ' ')
        length--;
    fprintf(to, "%.*s\n", (int)length, line);
}

char *text_copy(const char *text, size_t length)
{
    char *copy = malloc(length + 1);
    if (copy != NULL) {
        memcpy(copy, text, length);
        copy[length] = '\0';
    }
    return copy;
}
