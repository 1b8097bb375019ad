#include "base/html.h"

#include <assert.h>
#include <stdarg.h>
#include <string.h>

#include "base/text.h"

html html_to(FILE *to)
{
    return (html){.to = to};
}

/* These stand within a line; all others begin one. */
static bool is_inline(const char *tag)
{
    static const char *const tags[] = {"td", "th", "span", "strong", "small", "b", "title"};
    for (size_t i = 0; i < sizeof tags / sizeof tags[0]; i++)
        if (strcmp(tag, tags[i]) == 0)
            return true;
    return false;
}

static void begin(html *h, const char *tag, const char *attributes)
{
    fprintf(h->to, "%s<%s%s%s", is_inline(tag) ? "" : "\n", tag, attributes != NULL ? " " : "",
            attributes != NULL ? attributes : "");
}

void html_open(html *h, const char *tag, const char *attributes)
{
    assert(h->depth < HTML_DEPTH);
    begin(h, tag, attributes);
    fputc('>', h->to);
    h->open[h->depth++] = tag;
}

void html_close(html *h)
{
    assert(h->depth > 0);
    fprintf(h->to, "</%s>", h->open[--h->depth]);
    if (h->depth == 0)
        fputc('\n', h->to);
}

void html_empty(html *h, const char *tag, const char *attributes)
{
    begin(h, tag, attributes);
    fputs(" />", h->to);
}

bool html_forbids(const char *at, size_t length)
{
    const unsigned char *b = (const unsigned char *)at;
    bool excluded = length == 3 && b[0] == 0xEF && b[1] == 0xBF && b[2] >= 0xBE; /* U+FFFE and U+FFFF */
    return length == 0 || text_is_control(at, length) || text_unseen(at, length) > 0 || excluded;
}

static const char *escape_of(char c)
{
    static const char signs[] = "&<>\"'", *const escapes[] = {"&amp;", "&lt;", "&gt;", "&quot;", "&#39;"};
    const char *sign = strchr(signs, c);
    return c != '\0' && sign != NULL ? escapes[sign - signs] : NULL;
}

void html_page(html *h, bool scripted)
{
    fputs("<!DOCTYPE html>", h->to);
    html_open(h, "html", "xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\"");
    html_open(h, "head", NULL);
    html_empty(h, "meta", "charset=\"utf-8\"");
    html_empty(h, "meta",
               scripted ? "http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
                          "script-src 'unsafe-inline'\""
                        : "http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\"");
    html_empty(h, "meta", "name=\"viewport\" content=\"width=device-width, initial-scale=1\"");
}

void html_text(html *h, const char *text)
{
    while (*text != '\0') {
        size_t length = text_character(text);
        const char *escape = escape_of(*text);
        if (html_forbids(text, length))
            fputs("\xEF\xBF\xBD", h->to);
        else if (escape != NULL)
            fputs(escape, h->to);
        else
            fwrite(text, 1, length, h->to);
        text += length > 0 ? length : 1;
    }
}

void html_element(html *h, const char *tag, const char *attributes, const char *format, ...)
{
    char text[1001];
    va_list values;
    va_start(values, format);
    vsnprintf(text, sizeof text, format, values);
    va_end(values);
    html_open(h, tag, attributes);
    html_text(h, text);
    html_close(h);
}

void html_table(html *h, const char *label, const char *attributes, const char *const heads[])
{
    html_open(h, "div", "class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"table, may scroll sideways\"");
    html_open(h, "table", attributes);
    html_element(h, "caption", NULL, "%s", label);
    html_open(h, "thead", NULL);
    html_open(h, "tr", NULL);
    for (; *heads != NULL; heads++)
        html_element(h, "th", "scope=\"col\"", "%s", *heads);
    html_close(h);
    html_close(h);
    html_open(h, "tbody", NULL);
}

void html_table_end(html *h)
{
    html_close(h);
    html_close(h);
    html_close(h);
}

void html_row_head(html *h, const char *text)
{
    html_element(h, "th", "scope=\"row\"", "%s", text);
}
