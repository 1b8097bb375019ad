#include <math.h>

#include "base/constants.h"
#include "commands/plan/answer.h"

bool plan_works(const plan_answer *a)
{
    return boil_plan_proof_holds(a->best) && (!(a->odds.asked > 0) || a->odds.met);
}

plan_words plan_rule(const plan_answer *a)
{
    plan_words w = {
        "Water only while it boils, shut at once when it stops. Boil not back at the time above: no water, no load, "
        "wait, then plan again."};
    if (a->best->table.salts_count > 0)
        TEXT_ADD(w.text, " Salts likewise, sifted, never all at once; no water onto them.");
    if (!boil_plan_proof_holds(a->best))
        TEXT_ADD(w.text, " This sheet breaks limits: it is no plan to work by.");
    else if (!plan_works(a))
        TEXT_ADD(w.text, " This sheet has not the odds that were asked for.");
    return w;
}

plan_words plan_verdict(const plan_answer *a)
{
    const boil_plan_proof *p = a->best;
    double last_s = p->table.value.of[BOIL_PLAN_LAST_OUT_S], spare_s = a->problem.end_s - last_s;
    plan_words w = {""};
    if (!boil_plan_proof_holds(p)) {
        TEXT_ADD(w.text, "%s%s: ", plan_failed_count(a) > 0 ? "THERE IS NO PLAN" : "NO PLAN THAT HOLDS was found",
                 a->stopped ? " before it was stopped" : "");
        if (a->tried > 0)
            TEXT_ADD(w.text, "the best of %s", format_count(a->tried, "try", "tries").text);
        else
            TEXT_ADD(w.text, "the list's own order");
        TEXT_ADD(w.text, " breaks %s", format_count(p->broken_count, "limit", "limits").text);
        return w;
    }
    if (!plan_works(a))
        TEXT_ADD(w.text, "NO PLAN WITH THESE ODDS was found%s; the nearest: ", a->stopped ? " before it was stopped" : "");
    TEXT_ADD(w.text, "%s, last out %s", format_count(p->table.dips_count, "dip", "dips").text,
             format_clock(a->scenario->start_s, last_s).text);
    if (isfinite(spare_s))
        TEXT_ADD(w.text, ", %s before the end of the shift (%s)",
                 format_duration(spare_s < 60 ? floor(spare_s) : floor(spare_s / 60) * 60).text,
                 format_clock(a->scenario->start_s, a->problem.end_s).text);
    TEXT_ADD(w.text, "; every boil back within %.0f s of %.0f s; nothing above NOTICE", ceil(plan_slowest_s(p)),
             a->planning.bath.limit_s);
    return w;
}

static void dip_words(const plan_answer *a, const boil_plan_proof *p, const plan_line *l, plan_sheet_words *w)
{
    const boil_plan_dip *d = &p->table.dips[l->which];
    w->act = l->kind == PLAN_IN ? "IN" : "OUT";
    TEXT_ADD(w->what.text, "%s", plan_dip_names(a, &p->table, l->which).text);
    if (l->kind == PLAN_OUT)
        return;
    TEXT_ADD(w->what.text, ", %s", format_quantity(a->system, DIM_MASS, d->mass_kg).text);
    if (isfinite(p->seen[l->which].gravest_s))
        w->back = plan_clock_at(a, ceil(d->enters_s + p->seen[l->which].gravest_s));
    else
        TEXT_ADD(w->back.text, "never");
    TEXT_ADD(w->out.text, "%s", format_clock(a->scenario->start_s, d->leaves_s).text);
    w->why = plan_dip_reason(a, &p->table, l->which);
}

/* As one turns a tap: by the minute. */
static void water_words(const plan_answer *a, const boil_plan_pour *pour, plan_sheet_words *w)
{
    const char *by = a->system == UNITS_US ? "gal/min" : "L/min";
    double water_K = fmax(a->scenario->plant.ambient.temperature_K, BOIL_ZERO_CELSIUS);
    double volume_m3 = pour->mass_kg / boil_water_density(water_K);
    w->act = "WATER";
    TEXT_ADD(w->what.text, "%s, %.2f %s", format_quantity(a->system, DIM_VOLUME, volume_m3).text,
             unit_from_si(DIM_VOLUME_FLOW, by, volume_m3 / pour->over_s), by);
    w->out = plan_clock_at(a, pour->start_s + pour->over_s);
    TEXT_ADD(w->why.text, "while it boils");
}

/* As one sifts: by the scoop and the minute. */
static void salts_words(const plan_answer *a, const boil_plan_pour *salts, plan_sheet_words *w)
{
    const double minute_s = 60;
    const char *measure = format_unit(a->system, DIM_MASS);
    w->act = "SALTS";
    TEXT_ADD(w->what.text, "%s, %.2f %s/min", format_quantity(a->system, DIM_MASS, salts->mass_kg).text,
             unit_from_si(DIM_MASS, measure, salts->mass_kg / salts->over_s * minute_s), measure);
    w->out = plan_clock_at(a, salts->start_s + salts->over_s);
    TEXT_ADD(w->why.text, "while it boils");
}

plan_sheet_words plan_sheet_line(const plan_answer *a, const boil_plan_proof *p, const plan_line *l)
{
    plan_sheet_words w = {.act = "-----"};
    if (l->kind == PLAN_IN || l->kind == PLAN_OUT)
        dip_words(a, p, l, &w);
    else if (l->kind == PLAN_LIFT) {
        w.act = "OUT";
        TEXT_ADD(w.what.text, "%s", plan_hanging_name(a, l->which).text);
    } else if (l->kind == PLAN_WATER)
        water_words(a, &p->table.pours[l->which], &w);
    else if (l->kind == PLAN_SALTS)
        salts_words(a, &p->table.salts[l->which], &w);
    else {
        TEXT_ADD(w.what.text, "break");
        w.out = plan_clock_at(a, l->until_s);
    }
    return w;
}
