#include "commands/run/html_sections.h"

#include "describe/finding_words.h"

static void finding(html *h, const outcome *o, const boil_finding *f, unit_system s, bool only_possible)
{
    html_open(h, "tr", NULL);
    html_open(h, "th", "scope=\"row\"");
    page_severity(h, f->severity, only_possible);
    html_element(h, "span", "class=\"when\"", "%s", finding_clock(o, f).text);
    html_close(h);
    html_open(h, "td", NULL);
    html_element(h, "strong", NULL, "%s", finding_words_of(o, f, s).text);
    html_element(h, "p", NULL, "%s", f->advice);
    html_close(h);
    html_close(h);
}

static void list(html *h, const outcome *o, const boil_findings *found, unit_system s, const char *label, bool only_possible)
{
    static const char *const heads[] = {"How grave, when", "What, its limit, and what to do", NULL};
    page_table(h, label, "class=\"findings\"", heads);
    for (size_t i = 0; i < found->count; i++)
        finding(h, o, &found->list[i], s, only_possible);
    page_table_end(h);
}

void page_findings(html *h, const outcome *o, unit_system s)
{
    html_open(h, "section", "aria-labelledby=\"findings\"");
    html_element(h, "h2", "id=\"findings\"", "Findings");
    if (o->found.count > 0)
        list(h, o, &o->found, s, "Likely: in the central run", false);
    else
        html_element(h, "p", NULL, "None in the central run.");
    if (o->possible.count > 0)
        list(h, o, &o->possible, s, "Possible: only if the water mixes in three times faster", true);
    html_close(h);
}
