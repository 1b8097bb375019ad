#include "commands/run/page/sections.h"

#include <string.h>

#include "describe/gist.h"

/* The lines that decide, word for word as on the screen. */
void page_gist(html *h, const carried_out *o, unit_system s)
{
    gist g = gist_of(o, s);
    html_open(h, "p", "class=\"verdict\"");
    if (g.headline != NULL)
        page_severity(h, g.headline->severity, false);
    else
        html_element(h, "strong", NULL, "%s", g.word);
    html_text(h, g.behind.text);
    html_close(h);
    html_open(h, "dl", "class=\"gist\"");
    for (size_t i = 0; i < g.rows_count; i++) {
        html_element(h, "dt", NULL, "%s", g.rows[i].label);
        html_element(h, "dd", NULL, "%s", g.rows[i].says.text);
    }
    html_close(h);
}

/* What was put in and is no default, in two columns. */
void page_given(html *h, const scenario *s, unit_system system)
{
    html_open(h, "section", "aria-labelledby=\"given\"");
    html_element(h, "h2", "id=\"given\"", "What was put in");
    html_open(h, "dl", "class=\"given\"");
    for (size_t i = 0; i < key_count(); i++) {
        const key *k = key_at(i);
        if (s->settings[i].state != SETTING_GIVEN || k->kind == KEY_TITLE)
            continue;
        html_open(h, "div", NULL);
        html_element(h, "dt", NULL, "%s%s%s", k->section, k->section[0] != '\0' ? ": " : "", k->words);
        html_element(h, "dd", NULL, "%s", setting_words_of(s, i, system).text);
        html_close(h);
    }
    html_close(h);
    html_element(h, "p", NULL, "All else has its default; all of it stands in the page on a screen, or say check.");
    html_close(h);
}
