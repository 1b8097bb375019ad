#include "manual/pages.h"

#include <ctype.h>
#include <string.h>

#include "base/program.h"

#define WORD_MAX 120
#define LINE_MAX_BYTES 78

/* ASCII signs that roff takes for itself, or prints as something that cannot be typed. */
static const char *masked(char c)
{
    static const struct {
        char sign, escape[5];
    } masks[] = {{'\\', "\\e"}, {'-', "\\-"}, {'\'', "\\(aq"}, {'"', "\\(dq"}, {'`', "\\(ga"}, {'^', "\\(ha"}, {'~', "\\(ti"}};
    for (size_t i = 0; i < sizeof masks / sizeof masks[0]; i++)
        if (masks[i].sign == c)
            return masks[i].escape;
    return NULL;
}

/* The code point of a well-formed character of two to four bytes. */
static unsigned long code_point(const char *at, size_t length)
{
    unsigned long code = (unsigned char)at[0] & (0xFFu >> (length + 1));
    for (size_t i = 1; i < length; i++)
        code = code << 6 | ((unsigned char)at[i] & 0x3Fu);
    return code;
}

void roff_text(FILE *to, const char *text)
{
    if (*text == '.')
        fputs("\\&", to);
    for (size_t n; (n = text_character(text)) > 0; text += n) {
        const char *mask = masked(*text);
        if (n > 1)
            fprintf(to, "\\[u%04lX]", code_point(text, n));
        else if (mask != NULL)
            fputs(mask, to);
        else
            fputc(*text, to);
    }
}

static bool in_word(char c)
{
    return isalnum((unsigned char)c) || c == '-' || c == '%' || c == '_';
}

/* Bytes of the word at `at`; whether it stands for a value: capitals only. */
static size_t word_length(const char *at, bool *value)
{
    size_t n = 0;
    *value = isupper((unsigned char)at[0]);
    for (; in_word(at[n]) && n < WORD_MAX; n++)
        *value = *value && !islower((unsigned char)at[n]);
    return n;
}

void roff_form(FILE *to, const char *form)
{
    char piece[WORD_MAX + 1];
    while (*form != '\0') {
        bool value;
        size_t word = word_length(form, &value), n = word > 0 ? word : 1;
        memcpy(piece, form, n);
        piece[n] = '\0';
        fputs(word == 0 ? "" : value ? "\\fI" : "\\fB", to);
        roff_text(to, piece);
        fputs(word == 0 ? "" : "\\fR", to);
        form += n;
    }
}

void roff_term(FILE *to, const char *form)
{
    fputs(".TP\n", to);
    roff_form(to, form);
    fputc('\n', to);
}

void roff_between(FILE *to, const char *before, const char *text, const char *behind)
{
    fputs(before, to);
    roff_text(to, text);
    fputs(behind, to);
}

static void title(FILE *to, const char *name, int section)
{
    fprintf(to, ".\\\" written from the tables of the program: change those, not this\n.TH ");
    for (; *name != '\0'; name++)
        fprintf(to, "%s", *name == '-' ? "\\-" : (char[2]){(char)toupper((unsigned char)*name), '\0'});
    fprintf(to, " %d " BOIL_RELEASED " \"" PROGRAM_NAME " " BOIL_VERSION_TEXT "\"\n", section);
}

void roff_heading(FILE *to, const char *name, int section, const char *summary)
{
    title(to, name, section);
    roff_section(to, "NAME");
    roff_between(to, "", name, " \\- ");
    roff_between(to, "", summary, "\n");
}

/* Bytes of a line of text up to the blank where it is best broken; all of them when it need not be. */
static size_t break_at(const char *line, size_t length)
{
    size_t best = length;
    for (size_t i = 1; i < length; i++) {
        if (line[i] != ' ')
            continue;
        if (i > LINE_MAX_BYTES)
            return best < length ? best : i;
        if (line[i - 1] == '.' && line[i + 1] != '.')
            return i;
        if (length > LINE_MAX_BYTES)
            best = i;
    }
    return best;
}

/* A line that begins with a full stop or a quote would be taken for a request. A term must stay one line to roff: a
   backslash at the end of each but the last makes it so. */
static void text_line_broken(FILE *to, const char *line, size_t length, bool term)
{
    while (length > 0) {
        size_t n = break_at(line, length);
        fprintf(to, "%.*s%s\n", (int)n, line, term && n < length ? " \\" : "");
        line += n;
        length -= n;
        if (length == 0)
            return;
        line++;
        length--;
        fputs(*line == '.' || *line == '\'' ? "\\&" : "", to);
    }
}

void roff_broken(FILE *to, const char *page)
{
    bool as_is = false, term = false;
    while (*page != '\0') {
        size_t n = strcspn(page, "\n");
        as_is = strncmp(page, ".EX", 3) == 0 || (as_is && strncmp(page, ".EE", 3) != 0);
        if (as_is || *page == '.' || n == 0)
            fprintf(to, "%.*s\n", (int)n, page);
        else
            text_line_broken(to, page, n, term);
        term = strncmp(page, ".TP", 3) == 0;
        page += n + (page[n] == '\n');
    }
}

void roff_section(FILE *to, const char *heading)
{
    fprintf(to, ".SH %s\n", heading);
}

void roff_subsection(FILE *to, const char *heading)
{
    fprintf(to, ".SS %s\n", heading);
}

void roff_example(FILE *to, const char *lines)
{
    fputs(".RS 4\n.EX\n", to);
    while (*lines != '\0') {
        char line[200];
        size_t n = strcspn(lines, "\n");
        snprintf(line, sizeof line, "%.*s", (int)n, lines);
        roff_between(to, "", line, "\n");
        lines += n + (lines[n] == '\n');
    }
    fputs(".EE\n.RE\n", to);
}

void roff_sentence(FILE *to, const char *text)
{
    char first[2] = {(char)toupper((unsigned char)text[0]), '\0'};
    size_t length = strlen(text);
    if (length == 0)
        return;
    roff_text(to, first);
    roff_between(to, "", text + 1, text[length - 1] == '.' ? "\n" : ".\n");
}
