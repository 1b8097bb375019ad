#include "commands/run/page/sections.h"

#include <math.h>
#include <stdlib.h>

#define LISTED_MAX ((size_t)60)
#define MANY 10 /* on paper they stand in two columns; of fewer the second would have no head */

static void row(html *h, const carried_out *o, const carried_out_line *l, unit_system s)
{
    const boil_load_result *r = l->load;
    const char *fate = isnan(r->boil_lost_s) ? "kept" : r->was_quiet ? "was quiet" : carried_out_clock(o, r->boil_lost_s).text;
    html_open(h, "tr", NULL);
    html_row_head(h, carried_out_clock(o, l->time_s).text);
    html_element(h, "td", "class=\"words\"", "%s%s", l->words.text, l->after_overflow ? " (after overflow)" : "");
    html_element(h, "td", NULL, "%s", fate);
    html_element(h, "td", NULL, "%s",
                 isnan(r->boil_lost_s)  ? "-"
                 : isnan(r->recovery_s) ? "not back"
                                        : format_duration(r->recovery_s).text);
    html_element(h, "td", NULL, "%s", format_number(s, DIM_TEMPERATURE, r->lowest_temperature_K).text);
    html_element(h, "td", NULL, "%s", isnan(r->hot_s) ? "not hot" : format_duration(r->hot_s).text);
    html_close(h);
}

/* Every load in a row; scrolls by itself where it is too wide. */
void page_loads(html *h, const carried_out *o, unit_system s)
{
    char lowest[48];
    size_t count, shown = 0;
    carried_out_line *lines = carried_out_lines(o, &count);
    snprintf(lowest, sizeof lowest, "Lowest, %s", format_unit(s, DIM_TEMPERATURE));
    const char *const heads[] = {"In", "Load", "Boil lost", "Back after", lowest, "Hot after", NULL};
    if (o->central.loads_count > 0) {
        html_open(h, "section",
                  o->central.loads_count < MANY ? "aria-labelledby=\"loads\"" : "aria-labelledby=\"loads\" class=\"many\"");
        html_element(h, "h2", "id=\"loads\"", "Every load");
        html_table(h, "What became of each", "class=\"numbers\"", heads);
        for (size_t i = 0; i < count; i++)
            if (lines[i].load != NULL && shown++ < LISTED_MAX)
                row(h, o, &lines[i], s);
        html_table_end(h);
        if (shown > LISTED_MAX)
            html_element(h, "p", NULL, "... and %zu more: run --full.", shown - LISTED_MAX);
        html_close(h);
    }
    free(lines);
}
