#include <math.h>

#include "commands/plan/answer.h"

size_t plan_broken_told(const boil_plan_proof *p)
{
    return p->broken_count < BOIL_PLAN_BREAKS_KEPT ? p->broken_count : BOIL_PLAN_BREAKS_KEPT;
}

/* Of one dip, or of a part of it. */
static void add_about_dip(const plan_answer *a, const boil_plan_break *b, plan_words *w)
{
    switch (b->what) {
    case BOIL_PLAN_BREAKS_PLACING:
        TEXT_ADD(w->text, "finds no time at which it can hang long enough and no longer");
        break;
    case BOIL_PLAN_BREAKS_HEAT:
        TEXT_ADD(w->text, "takes more heat than lets the boil come back in time");
        break;
    case BOIL_PLAN_BREAKS_MASS:
        TEXT_ADD(w->text, "is heavier than the bath bears, %s", format_quantity(a->system, DIM_MASS, b->limit).text);
        break;
    case BOIL_PLAN_BREAKS_WATER:
        TEXT_ADD(w->text, "is in as the bath runs short of water");
        break;
    case BOIL_PLAN_BREAKS_RECOVERY:
        TEXT_ADD(w->text, "may stop the boil for %.0f s, the limit is %.0f s", b->value, b->limit);
        break;
    default: /* BOIL_PLAN_BREAKS_LATE */
        TEXT_ADD(w->text, "may have to wait %.0f s for the boil", b->value);
        break;
    }
}

static void add_about_part(const plan_answer *a, const boil_plan_break *b, plan_words *w)
{
    if (b->what == BOIL_PLAN_BREAKS_DUE)
        TEXT_ADD(w->text, "must be out by %s and is at %s", format_clock(a->scenario->start_s, b->limit).text,
                 plan_clock_at(a, b->value).text);
    else if (b->what == BOIL_PLAN_BREAKS_SHORT)
        TEXT_ADD(w->text, "is hot for %.1f min only, of %.1f", b->value / 60, b->limit / 60);
    else
        TEXT_ADD(w->text, "is hot for %.1f min, of at most %.1f", b->value / 60, b->limit / 60);
}

plan_words plan_broken(const plan_answer *a, const boil_plan_proof *p, size_t index)
{
    const boil_plan_break *b = &p->broken[index];
    bool of_part = b->what == BOIL_PLAN_BREAKS_DUE || b->what == BOIL_PLAN_BREAKS_SHORT || b->what == BOIL_PLAN_BREAKS_LONG;
    plan_words w = {""};
    if (b->what == BOIL_PLAN_BREAKS_END)
        TEXT_ADD(w.text, "the last is out at %s, the shift ends at %s", plan_clock_at(a, b->value).text,
                 format_clock(a->scenario->start_s, b->limit).text);
    else if (b->what == BOIL_PLAN_BREAKS_BAND)
        TEXT_ADD(w.text, "the bath boils %s %s its band", format_quantity(a->system, DIM_DIFFERENCE, fabs(b->value)).text,
                 b->value > 0 ? "above" : "below");
    else if (b->what == BOIL_PLAN_BREAKS_FINDING)
        TEXT_ADD(w.text, "%s: %s%s%s", boil_severity_word(b->severity), b->title, isnan(b->value) ? "" : ", ",
                 isnan(b->value) ? "" : plan_clock_at(a, b->value).text);
    else if (of_part) {
        TEXT_ADD(w.text, "%s ", plan_part_name(a, b->part).text);
        add_about_part(a, b, &w);
    } else {
        TEXT_ADD(w.text, "%s ", plan_dip_names(a, &p->table, b->dip).text);
        add_about_dip(a, b, &w);
    }
    return w;
}
