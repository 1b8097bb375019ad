/* base/html.h -- writes HTML that is well-formed XML too: what is opened is closed in its order, and every text is escaped.

   Tags and attributes are ours and written as they stand; words of a person go in as text, nowhere else. */
#ifndef BASE_HTML_H
#define BASE_HTML_H

#include <stdbool.h>
#include <stdio.h>

#define HTML_DEPTH 16

typedef struct {
    FILE *to;
    int depth;
    const char *open[HTML_DEPTH];
} html;

html html_to(FILE *to);

/* Begins a page in English, its html and its head: one file, which fetches nothing and by its own policy may not; of scripts only those
   that stand in it run, where it has any [W3C Content Security Policy Level 3]. */
void html_page(html *h, bool scripted);

void html_open(html *h, const char *tag, const char *attributes);  /* attributes: "class=\"wide\"", or NULL */
void html_close(html *h);                                          /* the innermost element */
void html_empty(html *h, const char *tag, const char *attributes); /* an element that can hold nothing: meta, br */

/* Whatever is no UTF-8, every control character, every one that is not seen but moves or hides what is, and the two that XML excludes
   become U+FFFD. */
void html_text(html *h, const char *text);
bool html_forbids(const char *at, size_t length); /* a character of this length in bytes, 0 where it is none */

/* An element with a text made as by printf, of at most 1000 bytes. */
void html_element(html *h, const char *tag, const char *attributes, const char *format, ...)
    __attribute__((format(printf, 4, 5)));

/* A table that may be wider than the screen: `label` names it, `attributes` are the table's, `heads` those of its columns,
   ending in NULL. */
void html_table(html *h, const char *label, const char *attributes, const char *const heads[]);
void html_table_end(html *h);
void html_row_head(html *h, const char *text);

#endif
