#include "commands/run/page/sections.h"

#include <string.h>

#include "describe/listing.h"

static const char *const heads[] = {"What", "US units", "SI units", "Note", NULL};

/* One cell where both systems say the same. */
static void in_both(html *h, const char *us, const char *si)
{
    if (strcmp(us, si) == 0) {
        html_element(h, "td", "colspan=\"2\"", "%s", us);
        return;
    }
    html_element(h, "td", NULL, "%s", us);
    html_element(h, "td", NULL, "%s", si);
}

static void setting(html *h, const scenario *s, size_t index)
{
    bool given = s->settings[index].state == SETTING_GIVEN;
    html_open(h, "tr", given ? NULL : "class=\"default\"");
    html_row_head(h, s->settings[index].key->words);
    in_both(h, setting_words_of(s, index, UNITS_US).text, setting_words_of(s, index, UNITS_SI).text);
    html_element(h, "td", NULL, "%s", given ? "given" : "default");
    html_close(h);
}

/* Each section of the file is a group of rows. */
static void section_begin(html *h, const char *section)
{
    html_close(h);
    html_open(h, "tbody", NULL);
    html_open(h, "tr", NULL);
    html_element(h, "th", "scope=\"rowgroup\" colspan=\"4\" class=\"group\"", "[%s]", section);
    html_close(h);
}

static void settings(html *h, const scenario *s)
{
    const char *section = "";
    html_table(h, "The scenario, with its defaults", "class=\"inputs\"", heads);
    for (size_t i = 0; i < key_count(); i++) {
        const key *k = key_at(i);
        if (s->settings[i].state == SETTING_ABSENT)
            continue;
        if (strcmp(k->section, section) != 0)
            section_begin(h, k->section);
        section = k->section;
        setting(h, s, i);
    }
    html_table_end(h);
}

static void charge(html *h, const scenario *s)
{
    listing_charge p = listing_charge_of(s);
    html_table(h, "What that comes to", "class=\"inputs\"", heads);
    for (size_t i = 0; i < p.count; i++) {
        const listing_row *r = &p.rows[i];
        html_open(h, "tr", NULL);
        html_row_head(h, r->name);
        in_both(h, format_exact(UNITS_US, r->dimension, r->si).text, format_exact(UNITS_SI, r->dimension, r->si).text);
        html_element(h, "td", NULL, "%s", r->note);
        html_close(h);
    }
    html_table_end(h);
}

static void uncertainties(html *h, const scenario *s)
{
    static const char *const uncertain_heads[] = {"What is uncertain", "How", NULL};
    if (s->uncertain_count == 0)
        return;
    html_table(h, "Not known well; this run has the values above", "class=\"inputs\"", uncertain_heads);
    for (size_t i = 0; i < s->uncertain_count; i++) {
        html_open(h, "tr", NULL);
        html_row_head(h, s->uncertain[i].thing.words);
        html_element(h, "td", NULL, "%s", s->uncertain[i].as_written);
        html_close(h);
    }
    html_table_end(h);
}

void page_inputs(html *h, const scenario *s)
{
    html_open(h, "section", "aria-labelledby=\"inputs\"");
    html_element(h, "h2", "id=\"inputs\"", "Inputs");
    settings(h, s);
    charge(h, s);
    uncertainties(h, s);
    html_close(h);
}
