#include "base/text.h"

#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#define CELL_WIDTH_MAX 100

/* The forms of RFC 3629, by first byte. */
static const struct {
    unsigned char first, last, second_low, second_high;
    size_t length;
} forms[] = {{0x00, 0x7F, 0, 0, 1},       {0xC2, 0xDF, 0x80, 0xBF, 2}, {0xE0, 0xE0, 0xA0, 0xBF, 3},
             {0xE1, 0xEC, 0x80, 0xBF, 3}, {0xED, 0xED, 0x80, 0x9F, 3}, {0xEE, 0xEF, 0x80, 0xBF, 3},
             {0xF0, 0xF0, 0x90, 0xBF, 4}, {0xF1, 0xF3, 0x80, 0xBF, 4}, {0xF4, 0xF4, 0x80, 0x8F, 4}};

static bool between(char byte, unsigned char low, unsigned char high)
{
    return (unsigned char)byte >= low && (unsigned char)byte <= high;
}

size_t text_character_within(const char *at, size_t left)
{
    for (size_t i = 0; i < sizeof forms / sizeof forms[0]; i++) {
        if (!between(at[0], forms[i].first, forms[i].last))
            continue;
        if (forms[i].length > left || (forms[i].length > 1 && !between(at[1], forms[i].second_low, forms[i].second_high)))
            return 0;
        for (size_t k = 2; k < forms[i].length; k++)
            if (!between(at[k], 0x80, 0xBF))
                return 0;
        return forms[i].length;
    }
    return 0;
}

size_t text_character(const char *at)
{
    return *at == '\0' ? 0 : text_character_within(at, 4); /* the end is no part of a longer one */
}

bool text_is_control(const char *at, size_t length)
{
    if (length == 1)
        return between(at[0], 0, 0x1F) || at[0] == 0x7F;
    return length == 2 && between(at[0], 0xC2, 0xC2) && between(at[1], 0x80, 0x9F);
}

static unsigned long code_point(const char *at, size_t length)
{
    unsigned long code = (unsigned char)at[0];
    if (length > 1)
        code &= 0x7Ful >> length;
    for (size_t i = 1; i < length; i++)
        code = code << 6 | ((unsigned char)at[i] & 0x3F);
    return code;
}

unsigned long text_unseen(const char *at, size_t length)
{
    static const struct {
        unsigned long first, last;
    } ranges[] = {{0xAD, 0xAD},     {0x34F, 0x34F},   {0x61C, 0x61C},   {0x115F, 0x1160},   {0x17B4, 0x17B5},
                  {0x180B, 0x180F}, {0x200B, 0x200F}, {0x2028, 0x202E}, {0x2060, 0x206F},   {0x3164, 0x3164},
                  {0xFEFF, 0xFEFF}, {0xFFA0, 0xFFA0}, {0xFFF0, 0xFFFB}, {0x1D173, 0x1D17A}, {0xE0000, 0xE0FFF}};
    unsigned long code = length > 1 ? code_point(at, length) : 0; /* all of them are longer */
    for (size_t i = 0; code > 0 && i < sizeof ranges / sizeof ranges[0]; i++)
        if (code >= ranges[i].first && code <= ranges[i].last)
            return code;
    return 0;
}

size_t text_characters(const char *at, const char *end)
{
    size_t n = 0;
    for (; at < end; at++)
        n += text_begins_character(*at);
    return n;
}

bool text_begins_character(char c)
{
    return ((unsigned char)c & 0xC0) != 0x80;
}

void text_add(char *text, size_t size, const char *format, ...)
{
    size_t used = strlen(text);
    va_list values;
    va_start(values, format);
    vsnprintf(text + used, size - used, format, values);
    va_end(values);
}

void text_join(char *text, size_t size, const char *more)
{
    size_t used = strlen(text), length = strlen(more), room = size - 1 - used;
    size_t taken = length < room ? length : room;
    memcpy(text + used, more, taken);
    text[used + taken] = '\0';
}

/* Copies one character, printable, and moves on; how many bytes were written. */
static size_t copy_character(char *to, const char **at)
{
    size_t length = text_character(*at);
    size_t passed = length > 0 ? length : 1;
    bool shown = length > 0 && !text_is_control(*at, length) && text_unseen(*at, length) == 0;
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

void text_show(FILE *to, const char *text)
{
    char shown[4];
    while (*text != '\0')
        fwrite(shown, 1, copy_character(shown, &text), to);
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

static size_t bytes_of(const char *text, size_t characters)
{
    size_t n = 0;
    for (; text[n] != '\0'; n++)
        if (text_begins_character(text[n]) && characters-- == 0)
            break;
    return n;
}

static bool behind_number(const char *text, size_t blank)
{
    return blank > 0 && between(text[blank - 1], '0', '9');
}

/* Bytes of the longest part that ends before a blank, not behind a number if there is another, and has room in `left` columns. If not
   even its first word has: 0, for it to begin a line of `whole` columns; a word too long for that too is broken. */
static size_t line_length(const char *text, size_t left, size_t whole)
{
    size_t best = 0, number = 0;
    for (size_t i = 0;; i++) {
        if (text[i] != '\0' && text[i] != ' ')
            continue;
        size_t wide = text_characters(text, text + i);
        if (wide > left && best + number == 0 && wide > whole && left >= whole)
            return bytes_of(text, left);
        if (wide > left)
            return best > 0 ? best : number;
        if (text[i] == '\0')
            return i;
        *(behind_number(text, i) ? &number : &best) = i;
    }
}

int text_wrapped(FILE *to, const char *text, int used, int indent, int width)
{
    int lines = 0;
    size_t whole = indent < width ? (size_t)(width - indent) : 1;
    do {
        int blanks = used < indent ? indent - used : used > 0 ? 1 : 0;
        int start = used + blanks;
        size_t n = line_length(text, used == 0 ? whole : start < width ? (size_t)(width - start) : 0, whole);
        if (to != NULL)
            fprintf(to, "%*s%.*s\n", n > 0 ? blanks : 0, "", (int)n, text);
        lines++;
        text += n;
        text += strspn(text, " ");
        used = 0;
    } while (*text != '\0');
    return lines;
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

size_t text_lines(const char *text)
{
    size_t n = 0;
    for (; *text != '\0'; text++)
        n += *text == '\n';
    return n;
}

char *text_printed(const char *format, ...)
{
    va_list values;
    va_start(values, format);
    int length = vsnprintf(NULL, 0, format, values);
    va_end(values);
    char *text = length >= 0 ? malloc((size_t)length + 1) : NULL;
    va_start(values, format);
    if (text != NULL)
        vsnprintf(text, (size_t)length + 1, format, values);
    va_end(values);
    return text;
}
