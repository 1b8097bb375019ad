#include <math.h>

#include "commands/plan/answer.h"

/* Each is one paragraph, "" where there is nothing to say. */

static plan_words stands(const plan_answer *a)
{
    const now_section *n = a->rest->now;
    plan_words w = {""};
    TEXT_ADD(w.text, "It is %s, the bath reads %s", plan_clock_at(a, 0).text,
             format_quantity(a->system, DIM_TEMPERATURE, n->reads_K).text);
    if (n->boils)
        TEXT_ADD(w.text, " and boils; it boiled at %s as the shift began.",
                 format_quantity(a->system, DIM_TEMPERATURE, a->rest->under_way.set_K).text);
    else
        TEXT_ADD(w.text,
                 " and DOES NOT BOIL. Heat it up first: it may boil from %s on. No water and no load before it boils all over.",
                 plan_clock_at(a, ceil(a->planning.bath.ready_s)).text);
    return w;
}

/* Nobody can read off a thermometer that there is none. */
static plan_words afloat(const plan_answer *a)
{
    plan_words w = {""};
    if (!a->rest->now->boils)
        TEXT_ADD(w.text,
                 "Went water in since it last boiled? Then it may float there, which this plan does not know: stand back, add "
                 "nothing, keep parts out; low heat until it boils.");
    return w;
}

/* No plan holds that begins with a limit broken. */
static plan_words band(const plan_answer *a)
{
    const boil_limits *l = &a->scenario->plant.limits;
    double at_K = a->scenario->plant.charge.value;
    plan_words w = {""};
    if ((l->boiling_point_high_K > 0 && at_K > l->boiling_point_high_K) || at_K < l->boiling_point_low_K)
        TEXT_ADD(w.text,
                 "It boils outside its band: bring it back first, as 'correct' says, read it again, and plan from there.");
    return w;
}

static plan_words next(const plan_answer *a)
{
    const boil_plan_timetable *t = &a->best->table;
    double load_s = HUGE_VAL;
    plan_words w = {""};
    for (size_t k = 0; k < t->dips_count; k++)
        load_s = fmin(load_s, t->dips[k].enters_s);
    TEXT_ADD(w.text, "No load before %s", plan_clock_at(a, load_s).text);
    if (t->pours_count > 0)
        TEXT_ADD(w.text, ", no water before %s", plan_clock_at(a, t->pours[0].start_s).text);
    else
        TEXT_ADD(w.text, ", and no water");
    TEXT_ADD(w.text, ".");
    return w;
}

bool plan_hanging_overdone(const plan_answer *a, size_t dip)
{
    return a->hanging[dip].dip.leaves_s > a->hanging[dip].most_s;
}

double plan_hanging_late_s(const plan_answer *a, size_t dip)
{
    const now_section *n = a->rest->now;
    double late_s = 0;
    for (size_t i = 0; i < n->count; i++)
        if (n->list[i].kind == NOW_HANGS && n->list[i].dip == dip)
            late_s = fmax(late_s, a->lifts[dip].leaves_s - (a->rest->of[n->list[i].job].job.due_s - n->clock_s));
    return late_s;
}

/* What hangs there and is due before it can be out. */
static plan_words late(const plan_answer *a)
{
    plan_words w = {""};
    for (size_t k = 0; k < a->problem.hanging_count; k++)
        if (plan_hanging_late_s(a, k) > 0)
            TEXT_ADD(w.text, "%s%s by %s", w.text[0] == '\0' ? "IN THE TANK, AND LATE: " : ", ", plan_hanging_name(a, k).text,
                     format_duration(plan_hanging_late_s(a, k)).text);
    if (w.text[0] != '\0')
        TEXT_ADD(w.text, ".");
    return w;
}

/* What has had its most. */
static plan_words overdone(const plan_answer *a)
{
    plan_words w = {""};
    for (size_t k = 0; k < a->problem.hanging_count; k++)
        if (plan_hanging_overdone(a, k))
            TEXT_ADD(w.text, "%s%s", w.text[0] == '\0' ? "Longer in than it may be by its lift: " : ", ",
                     plan_hanging_name(a, k).text);
    if (w.text[0] != '\0')
        TEXT_ADD(w.text, ".");
    return w;
}

plan_words plan_now_told(const plan_answer *a, size_t index)
{
    static plan_words (*const all[])(const plan_answer *a) = {stands, afloat, band, next, late, overdone};
    for (size_t i = 0; a->rest != NULL && i < sizeof all / sizeof all[0]; i++) {
        plan_words w = all[i](a);
        if (w.text[0] != '\0' && index-- == 0)
            return w;
    }
    return (plan_words){""};
}

plan_names plan_hanging_name(const plan_answer *a, size_t dip)
{
    const now_section *n = a->rest->now;
    plan_names w = {""};
    for (size_t i = 0; i < n->count; i++) {
        const now_job *j = &n->list[i];
        if (j->kind != NOW_HANGS || j->dip != dip)
            continue;
        TEXT_ADD(w.text, "%s%.60s", w.text[0] != '\0' ? " + " : "", text_plain(a->rest->of[j->job].name).text);
        if (j->of > 1)
            TEXT_ADD(w.text, " %zu/%zu", j->number + 1, j->of);
    }
    return w;
}
