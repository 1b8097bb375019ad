#include "reading/source.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "base/text.h"

void source_free(source *s)
{
    free(s->name);
    free(s->bytes);
    free(s->lines);
    *s = (source){0};
}

/* All bytes up to one more than allowed; NULL and errno when it cannot be read. */
static char *slurp(FILE *f, size_t *length)
{
    char *bytes = malloc(SOURCE_BYTES_MAX + 1);
    if (bytes == NULL)
        return NULL;
    *length = fread(bytes, 1, SOURCE_BYTES_MAX + 1, f);
    if (ferror(f)) {
        int why = errno;
        free(bytes);
        errno = why;
        return NULL;
    }
    char *fitted = realloc(bytes, *length + 1);
    return fitted != NULL ? fitted : bytes;
}

static char *read_bytes(const char *path, size_t *length)
{
    if (strcmp(path, "-") == 0)
        return slurp(stdin, length);
    FILE *f = fopen(path, "rb");
    if (f == NULL)
        return NULL;
    char *bytes = slurp(f, length);
    int why = errno;
    fclose(f);
    errno = why;
    return bytes;
}

static bool add_line(source *s, const char *text, size_t length)
{
    source_line *lines = boil_array_reserve(s->lines, &s->capacity, s->count, sizeof *lines);
    if (lines == NULL)
        return false;
    s->lines = lines;
    lines[s->count++] = (source_line){text, length};
    return true;
}

static bool split(source *s, size_t length)
{
    const char *at = s->bytes, *end = at + length;
    if (length >= 3 && memcmp(at, "\xEF\xBB\xBF", 3) == 0)
        at += 3;
    while (at < end) {
        const char *stop = memchr(at, '\n', (size_t)(end - at));
        const char *next = stop != NULL ? stop + 1 : end;
        if (stop == NULL)
            stop = end;
        if (stop > at && stop[-1] == '\r' && next != stop)
            stop--;
        if (!add_line(s, at, (size_t)(stop - at)))
            return false;
        at = next;
    }
    return s->count > 0 || add_line(s, end, 0);
}

/* A control character; a tab is a blank. */
static bool is_refused(const char *at, size_t length)
{
    return *at != '\t' && text_is_control(at, length);
}

/* How much of a text is plain ASCII, as nearly all is: nothing in that can be wrong. */
static size_t plain(const char *text, size_t length)
{
    size_t n = 0;
    while (n < length && (unsigned char)(text[n] - ' ') <= '~' - ' ')
        n++;
    return n;
}

/* The first fault of a line, if any, is reported; false then. */
static bool check_line(const source *s, size_t number, messages *m)
{
    const source_line *l = &s->lines[number - 1];
    for (size_t i = 0; (i += plain(l->text + i, l->length - i)) < l->length;) {
        const char *at = l->text + i;
        size_t n = text_character_within(at, l->length - i);
        unsigned long unseen = n > 0 ? text_unseen(at, n) : 0;
        if (n > 0 && unseen == 0 && !is_refused(at, n)) {
            i += n;
            continue;
        }
        if (unseen > 0)
            return messages_add(m, s, number, at,
                                "character U+%04lX is not seen, but hides or turns round what is: take it out", unseen);
        if (n == 0)
            return messages_add(m, s, number, at, "byte 0x%02X is not UTF-8 text; save the file as UTF-8",
                                (unsigned char)at[0]);
        if (at[0] == 0)
            return messages_add(m, s, number, at, "a NUL byte: this is not a text file");
        return messages_add(m, s, number, at, "control character 0x%02X in the text", (unsigned char)at[n - 1]);
    }
    return true;
}

static bool check(const source *s, messages *m)
{
    bool good = true;
    for (size_t n = 1; n <= s->count && !messages_full(m); n++)
        if (!check_line(s, n, m))
            good = false;
    return good;
}

/* Takes the bytes over. */
static bool take(source *s, size_t length, messages *m)
{
    if (length > SOURCE_BYTES_MAX)
        return messages_add(m, s, 0, NULL, "is longer than 1 MiB");
    return split(s, length) ? check(s, m) : messages_lost(m);
}

bool source_read(source *s, const char *path, int order, messages *m)
{
    size_t length = 0;
    const char *name = strcmp(path, "-") == 0 ? "standard input" : path;
    *s = (source){.order = order, .name = text_copy(name, strlen(name))};
    s->bytes = read_bytes(path, &length);
    if (s->name == NULL || (s->bytes == NULL && errno == ENOMEM))
        return messages_lost(m);
    if (s->bytes == NULL)
        return messages_add(m, s, 0, NULL, "cannot be read: %s", strerror(errno));
    return take(s, length, m);
}

bool source_of_bytes(source *s, const char *name, char *bytes, size_t length, messages *m)
{
    *s = (source){.name = text_copy(name, strlen(name)), .bytes = bytes};
    if (s->name == NULL || bytes == NULL)
        return messages_lost(m);
    return take(s, length, m);
}
