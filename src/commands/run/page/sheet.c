#include "commands/run/page/sections.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "commands/run/parts.h"

/* Beyond this a sheet is no sheet any more; and so many boxes to tick stand in one row. */
#define LISTED_MAX ((size_t)400)
#define TICKS_MAX ((size_t)48)

/* What its own moment makes of an order stands in its row; what holds for all of a kind, once, above. */
static void expect(html *h, const carried_out *o, const run_action *r, unit_system s)
{
    boil_severity severity;
    const char *warning = run_action_warning(o, r, &severity);
    html_open(h, "td", "class=\"expect\"");
    if (warning != NULL) {
        page_severity(h, severity, false);
        html_element(h, "strong", NULL, " %s ", warning);
    }
    html_text(h, run_action_expected(o, r, s).text);
    html_close(h);
}

static void order_row(html *h, const carried_out *o, const run_action *r, unit_system s)
{
    action_text details = run_action_details(o, r, s);
    html_open(h, "tr", NULL);
    html_open(h, "td", "class=\"ticks\"");
    for (size_t i = 0; i < r->times && i < TICKS_MAX; i++)
        html_element(h, "span", "class=\"tick\"", "%s", "");
    html_close(h);
    html_element(h, "td", "class=\"clock\"", "%s", run_action_clock(o, r).text);
    html_element(h, "td", "class=\"letter\"", "%c", run_action_type(o, r)->letter);
    html_open(h, "th", "scope=\"row\"");
    html_element(h, "span", "class=\"doing\"", "%s", run_action_done(o, r).text);
    if (details.text[0] != '\0')
        html_element(h, "small", NULL, " %s", details.text);
    html_close(h);
    expect(h, o, r, s);
    html_element(h, "td", "class=\"reading\"", "%s", "");
    html_close(h);
}

static void break_row(html *h, const scenario *s, size_t index)
{
    html_open(h, "tr", NULL);
    html_element(h, "td", NULL, "%s", "");
    html_element(h, "td", "class=\"clock\"", "%s", format_clock(s->start_s, s->schedule.breaks[index].from_s).text);
    html_element(h, "td", NULL, "%s", "");
    html_open(h, "th", "scope=\"row\"");
    html_element(h, "span", "class=\"doing\"", "break %s", s->wording.breaks[index].text);
    html_element(h, "small", NULL, " until %s", format_clock(s->start_s, s->schedule.breaks[index].to_s).text);
    html_close(h);
    html_element(h, "td", NULL, "%s", "Nobody is at the tank: no tap runs, no load comes out by hand.");
    html_element(h, "td", NULL, "%s", "");
    html_close(h);
}

/* Those that begin in a stretch of time. */
static void break_rows(html *h, const scenario *s, double from_s, double to_s)
{
    for (size_t i = 0; i < s->schedule.breaks_count; i++)
        if (s->schedule.breaks[i].from_s >= from_s && s->schedule.breaks[i].from_s < to_s)
            break_row(h, s, i);
}

/* Whether an order before this one has the same letter and the same caution. */
static bool said_before(const carried_out *o, const run_action *list, size_t i)
{
    for (size_t k = 0; k < i; k++)
        if (run_action_type(o, &list[k])->letter == run_action_type(o, &list[i])->letter &&
            strcmp(run_action_caution(o, &list[k]), run_action_caution(o, &list[i])) == 0)
            return true;
    return false;
}

static void cautions(html *h, const carried_out *o, const run_action *list, size_t count)
{
    html_open(h, "ul", "class=\"cautions\"");
    html_open(h, "li", NULL);
    html_element(h, "strong", NULL, "! No boil: no water, no load, hands off; wait for it.");
    html_close(h);
    for (size_t i = 0; i < count; i++) {
        const action_type *type = run_action_type(o, &list[i]);
        if (run_action_caution(o, &list[i])[0] == '\0' || said_before(o, list, i))
            continue;
        html_open(h, "li", NULL);
        html_element(h, "strong", NULL, "%c", type->letter);
        html_element(h, "span", NULL, " %s: %s", type->keyword, run_action_caution(o, &list[i]));
        html_close(h);
    }
    html_close(h);
}

/* The head comes again on each sheet of paper, and the rule with it. */
static void table(html *h, const carried_out *o, const run_action *list, size_t count, unit_system s)
{
    static const char *const heads[] = {"Done", "Time", "", "What to do", "Expect", "Reading, initials", NULL};
    html_open(h, "table", "class=\"sheet\"");
    html_element(h, "caption", NULL, "By the clock");
    html_open(h, "thead", NULL);
    html_open(h, "tr", NULL);
    html_element(h, "td", "colspan=\"6\" class=\"rule\"",
                 "! Water only while the bath boils. No boil: no water, no load, hands off.");
    html_close(h);
    html_open(h, "tr", NULL);
    for (size_t i = 0; heads[i] != NULL; i++)
        html_element(h, "th", "scope=\"col\"", "%s", heads[i][0] != '\0' ? heads[i] : "Kind");
    html_close(h);
    html_close(h);
    html_open(h, "tbody", NULL);
    double last_s = 0;
    for (size_t i = 0; i < count && i < LISTED_MAX; last_s = list[i++].time_s) {
        break_rows(h, o->scenario, last_s, list[i].time_s);
        order_row(h, o, &list[i], s);
    }
    break_rows(h, o->scenario, last_s, (double)INFINITY);
    html_open(h, "tr", NULL);
    html_element(h, "td", "class=\"ticks\"", "%s", "");
    html_element(h, "th", "scope=\"row\" colspan=\"4\"", "At the end: read boiling point and level, and write them here.");
    html_element(h, "td", "class=\"reading\"", "%s", "");
    html_close(h);
    html_close(h);
    html_close(h);
    if (count > LISTED_MAX)
        html_element(h, "p", NULL, "... and %zu more, the last from %s on: too many for a sheet.", count - LISTED_MAX,
                     carried_out_clock(o, list[count - 1].time_s).text);
}
static void valve(html *h, const carried_out *o, unit_system s)
{
    const boil_water_control *c = &o->scenario->plant.control;
    if (c->mode == BOIL_WATER_CONTROL_NONE)
        return;
    html_element(h, "p", NULL, "Automatic water: the valve holds %s with up to %s. %s", SHOWN(s, TEMPERATURE, c->set_point_K),
                 SHOWN(s, MASS_FLOW, c->rate_kg_s),
                 c->only_while_boiling ? "Its interlock shuts it while the bath does not boil: test that before the shift."
                                       : "It has no interlock: when the boil is lost, shut it by hand.");
}

/* A sheet that leads into what was warned of must not look like one to work by. */
static void warn(html *h, const carried_out *o)
{
    boil_severity gravest = carried_out_gravest(o);
    if (!carried_out_stopped(o) && gravest < BOIL_SEVERITY_WARNING)
        return;
    html_open(h, "p", "class=\"caution-box\"");
    if (gravest >= BOIL_SEVERITY_WARNING)
        page_severity(h, gravest, false);
    html_element(h, "strong", NULL, " Do not work to this sheet: %s. Change the plan first.",
                 carried_out_stopped(o) ? "the run stopped early" : "see the findings");
    html_close(h);
}

void page_sheet(html *h, const carried_out *o, unit_system s)
{
    size_t count;
    run_action *list = run_actions_of(o, &count);
    html_open(h, "section", "aria-labelledby=\"sheet\" class=\"new-page\"");
    html_element(h, "h2", "id=\"sheet\"", "Run sheet");
    warn(h, o);
    cautions(h, o, list, count);
    valve(h, o, s);
    if (count > 0 || o->scenario->schedule.breaks_count > 0)
        table(h, o, list, count, s);
    else
        html_element(h, "p", NULL, "Nothing is done.");
    html_element(h, "p", "class=\"sign\"", "Date: ______________ Shift: ______________ Signed: ____________________");
    html_close(h);
    free(list);
}
