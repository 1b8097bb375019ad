#include <math.h>

#include "base/threads.h"
#include "commands/plan/answer.h"
#include "describe/report.h"
#include "plan/order.h"
#include "planning/relaxed.h"

static void copy_order(const boil_plan_timetable *t, boil_plan_order *o)
{
    o->dips_count = t->dips_count;
    for (size_t k = 0; k < t->dips_count; k++)
        o->first[k] = t->dips[k].first;
    o->first[t->dips_count] = o->parts_count;
    for (size_t i = 0; i < o->parts_count; i++)
        o->parts[i] = t->parts[i];
}

/* Carried out are those of the shift and the plant first, of jobs the first few: each takes runs of a whole shift. */
static boil_outcome prove_gives(plan_answer *a, const boil_plan_order *best)
{
    const boil_plan_asked asked = {&a->planning, a->rest != NULL ? &a->rest->under_way : NULL, best, a->best, a->seed};
    const size_t most = 8; /* judgement: some seconds for thirty jobs */
    boil_outcome outcome = BOIL_OK;
    size_t proved = 0;
    for (int of_jobs = 0; of_jobs < 2; of_jobs++)
        for (size_t i = 0; i < a->gives_count && proved < most && outcome == BOIL_OK && !threads_asked_to_stop(); i++) {
            boil_plan_relaxation *r = &a->gives[i];
            bool of_job = r->what == BOIL_PLAN_GIVES_MUST || r->what == BOIL_PLAN_GIVES_JOB;
            if (!r->works || of_job != (of_jobs == 1))
                continue;
            outcome = boil_planning_relaxed(&asked, r);
            proved++;
        }
    return outcome;
}

/* What must fail is said first; only where nothing must, what would have to give. Where times and masses hold and the runs find
   something, neither has anything to say. */
boil_outcome plan_explain(plan_answer *a)
{
    const boil_plant *p = &a->scenario->plant;
    boil_plan_case c = boil_planning_case(&a->planning);
    boil_plan_order o;
    if (boil_plan_proof_holds(a->best) || a->planning.idle_count > 0 || a->stopped)
        return BOIL_OK;
    boil_outcome outcome = boil_plan_conditions_failed(&c, a->failed, &a->failed_count);
    if (outcome != BOIL_OK || boil_plan_holds(&a->best->table.value))
        return outcome;
    outcome = boil_plan_order_begin(&o, c.parts_count);
    if (outcome != BOIL_OK)
        return outcome;
    copy_order(&a->best->table, &o);
    outcome =
        boil_plan_relax(&c, &o, boil_heater_output(&p->heater, 1, a->planning.bath_K), a->seed, a->gives, &a->gives_count);
    if (outcome == BOIL_OK)
        outcome = prove_gives(a, &o);
    boil_plan_order_free(&o);
    return outcome;
}

static const char *alone(const plan_answer *a)
{
    return a->problem.hanging_count > 0 ? "if nothing else goes in" : "alone in the tank";
}

plan_words plan_failed(const plan_answer *a, size_t index)
{
    plan_words w = {""};
    if (index < a->planning.idle_count) {
        const boil_plan_fault *bath = &a->planning.idle[index];
        TEXT_ADD(w.text, "the bath by itself, before anything goes in: %s: %s", boil_severity_word(bath->severity),
                 bath->title);
        return w;
    }
    const boil_plan_condition *f = &a->failed[index - a->planning.idle_count];
    switch (f->what) {
    case BOIL_PLAN_NEEDS_TIME:
        TEXT_ADD(w.text, "%s, %s, is out at %s at the earliest, and should be by %s", plan_part_name(a, f->part).text, alone(a),
                 plan_clock_at(a, f->value).text, format_clock(a->scenario->start_s, f->limit).text);
        break;
    case BOIL_PLAN_NEEDS_WINDOW:
        TEXT_ADD(w.text, "%s, %s, finds no time between the breaks at which it can be lifted", plan_part_name(a, f->part).text,
                 alone(a));
        break;
    case BOIL_PLAN_NEEDS_PLACES:
        TEXT_ADD(w.text, "all stays together take %s of the positions, which have %s until the end",
                 format_duration(f->value).text, format_duration(f->limit).text);
        break;
    case BOIL_PLAN_NEEDS_HEAT:
        TEXT_ADD(w.text, "one boil after the other is back in %s at the least, and there are %s until the end",
                 format_duration(f->value).text, format_duration(f->limit).text);
        break;
    case BOIL_PLAN_NEEDS_WATER:
        TEXT_ADD(w.text, "%s of water would be missing before the last job may go in, the band bears %s",
                 format_quantity(a->system, DIM_MASS, f->value).text, format_quantity(a->system, DIM_MASS, f->limit).text);
        break;
    case BOIL_PLAN_NEEDS_LIFT:
        TEXT_ADD(w.text, "%s hangs there until %s, and should be out by %s", plan_hanging_name(a, f->part).text,
                 plan_clock_at(a, f->value).text, format_clock(a->scenario->start_s, f->limit).text);
        break;
    case BOIL_PLAN_NEEDS_BAND:
        TEXT_ADD(w.text, "the bath boils %s %s its band as it begins",
                 format_quantity(a->system, DIM_DIFFERENCE, fabs(f->value)).text, f->value > 0 ? "above" : "below");
        break;
    }
    return w;
}

plan_words plan_gives(const plan_answer *a, size_t index)
{
    const boil_plan_relaxation *r = &a->gives[index];
    const text_cell job = text_plain(a->scenario->jobs.list[r->job].name); /* of those that concern no job: not said */
    plan_words w = {""};
    switch (r->what) {
    case BOIL_PLAN_GIVES_END:
        TEXT_ADD(w.text, "an open end");
        break;
    case BOIL_PLAN_GIVES_MUST:
        TEXT_ADD(w.text, "%.60s need not be out when due", job.text);
        break;
    case BOIL_PLAN_GIVES_JOB:
        TEXT_ADD(w.text, "%.60s left out", job.text);
        break;
    case BOIL_PLAN_GIVES_POSITIONS:
        TEXT_ADD(w.text, "%.0f positions", r->value);
        break;
    case BOIL_PLAN_GIVES_HEAT:
        TEXT_ADD(w.text, "%.2f times the heat", r->value);
        break;
    case BOIL_PLAN_GIVES_LIMIT:
        TEXT_ADD(w.text, "recovery in %s, and dips as much heavier", format_duration(r->value).text);
        break;
    case BOIL_PLAN_GIVES_HOIST:
        TEXT_ADD(w.text, "a move of the hoist in %s", format_duration(r->value).text);
        break;
    }
    return w;
}

/* Those of one kind, behind what is said of them all. */
static void list_working(const plan_answer *a, boil_plan_proven proof, const char *words, FILE *to)
{
    bool any = false;
    for (size_t i = 0; i < a->gives_count; i++) {
        const boil_plan_relaxation *r = &a->gives[i];
        if (!r->works || r->proof != proof)
            continue;
        if (!any)
            report_paragraph(to, "%s", words);
        any = true;
        report_paragraph(to, "- %s: last out %s", plan_gives(a, i).text, plan_clock_at(a, r->last_out_s).text);
    }
}

static void list_gives(const plan_answer *a, FILE *to)
{
    char not [1200] = "";
    bool any = false;
    list_working(a, BOIL_PLAN_PROVED, "One of these would do; each was planned anew and carried out:", to);
    list_working(a, BOIL_PLAN_UNPROVED,
                 "By what the search knows one of these would do; plan it anew before you count on it:", to);
    for (size_t i = 0; i < a->gives_count; i++) {
        const boil_plan_relaxation *r = &a->gives[i];
        any = any || (r->works && r->proof != BOIL_PLAN_DISPROVED);
        if (!r->works || r->proof == BOIL_PLAN_DISPROVED)
            TEXT_ADD(not, "%s%s", not [0] != '\0' ? "; " : "", plan_gives(a, i).text);
    }
    if (not [0] != '\0')
        report_paragraph(to, "%sound no help in: %s.", any ? "F" : "It f", not );
}

/* The bath first, then the jobs. */
size_t plan_failed_count(const plan_answer *a)
{
    return a->planning.idle_count + a->failed_count;
}

/* Times and masses hold, and the bath by itself: all that is broken is found by runs. */
static bool is_found_alone(const plan_answer *a)
{
    for (size_t i = 0; i < plan_broken_told(a->best); i++)
        if (a->best->broken[i].what != BOIL_PLAN_BREAKS_FINDING)
            return false;
    return !boil_plan_proof_holds(a->best) && plan_failed_count(a) == 0 && !a->stopped;
}

void plan_none_report(const plan_answer *a, FILE *to)
{
    if (plan_failed_count(a) > 0)
        fputs("\n There is none, in whatever order:\n", to);
    for (size_t i = 0; i < plan_failed_count(a); i++)
        report_paragraph(to, "- %s", plan_failed(a, i).text);
    if (is_found_alone(a))
        report_paragraph(
            to, "No order that was tried mends what the runs find: look at parts, bath and limits. Of what '--write' writes "
                "'run' says more.");
    list_gives(a, to);
}
