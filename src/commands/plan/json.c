#include <math.h>
#include <stdlib.h>

#include "commands/plan/answer.h"
#include "describe/report.h"

/* A line of the run sheet, for both. */
typedef struct {
    double time_s;
    formatted_text clock;
    const char *act;
    plan_names names, reason;
    double mass_kg, until_s, back_s;
} act;

/* clang-format off */
#define RECORD act
static const field act_fields[] = {
    SAME(time_s, "when, from the start"), CHARS("clock", clock, "the same on the wall"),
    TEXT("act", act, "in, out, water, salts or break"), CHARS("names", names, "of what hangs in the dip"),
    SAME(mass_kg, "steel and baskets, water, or salts; nothing: none of them"), SAME(until_s, "it hangs, runs or lasts until then"),
    SAME(back_s, "in: the boil is back by then, by the gravest of all runs"), CHARS("reason", reason, "in: what it waited for"),
    FIELDS_END};
#undef RECORD
/* clang-format on */

static act act_of(const plan_answer *a, const boil_plan_proof *p, const plan_line *l)
{
    static const char *const words[] = {[PLAN_IN] = "in",       [PLAN_OUT] = "out",     [PLAN_LIFT] = "out",
                                        [PLAN_WATER] = "water", [PLAN_SALTS] = "salts", [PLAN_BREAK] = "break"};
    const double none = (double)NAN;
    act x = {.time_s = l->time_s,
             .clock = plan_clock_at(a, l->time_s),
             .act = words[l->kind],
             .mass_kg = none,
             .until_s = l->until_s,
             .back_s = none};
    if (l->kind == PLAN_IN || l->kind == PLAN_OUT) {
        x.names = plan_dip_names(a, &p->table, l->which);
        x.mass_kg = p->table.dips[l->which].mass_kg;
    }
    if (l->kind == PLAN_LIFT)
        x.names = plan_hanging_name(a, l->which);
    if (l->kind == PLAN_IN) {
        x.reason = plan_dip_reason(a, &p->table, l->which);
        x.back_s = l->time_s + p->seen[l->which].gravest_s;
    }
    if (l->kind == PLAN_WATER)
        x.mass_kg = p->table.pours[l->which].mass_kg;
    if (l->kind == PLAN_SALTS)
        x.mass_kg = p->table.salts[l->which].mass_kg;
    return x;
}

/* What was sought and what came of the list's own order are told alike. */
typedef struct {
    const plan_answer *answer;
    const boil_plan_proof *proof;
} told;

typedef struct {
    const char *job;
    double number, of, mass_kg, pieces;
} part;

typedef struct {
    plan_names names;
    double enters_s, leaves_s, likely_back_s, back_s, mass_kg;
    plan_names reason;
    const told *of;
    size_t index;
} dip;

typedef struct {
    plan_words words;
} breach;

/* clang-format off */
#define RECORD part
static const field part_fields[] = {
    TEXT("job", job, "its name"), SAME(number, "which of its parts, from 1"), SAME(of, "how many there are"),
    SAME(mass_kg, "of the steel"), SAME(pieces, "how many; null: not counted"), FIELDS_END};
#undef RECORD
/* clang-format on */

static void parts(json *j, const char *name, const void *record)
{
    const dip *d = record;
    const plan_answer *a = d->of->answer;
    const boil_plan_timetable *t = &d->of->proof->table;
    json_list(j, name);
    for (size_t i = 0; i < t->dips[d->index].count; i++) {
        const boil_plan_part *p = &a->planning.parts.list[t->parts[t->dips[d->index].first + i]];
        const part x = {.job = a->scenario->jobs.list[p->job].name,
                        .number = (double)p->number + 1,
                        .of = (double)p->of,
                        .mass_kg = p->load.mass_kg,
                        .pieces = p->load.pieces > 0 ? p->load.pieces : (double)NAN};
        json_record(j, NULL, part_fields, &x);
    }
    json_close(j);
}

/* clang-format off */
#define RECORD dip
static const field dip_fields[] = {
    CHARS("names", names, "of what hangs together"), SAME(enters_s, "goes in, from the start"), SAME(leaves_s, "its lift begins"),
    SAME(likely_back_s, "the boil is back, by the likely run"), SAME(back_s, "by the gravest of all; null: not"),
    SAME(mass_kg, "baskets too"), CHARS("reason", reason, "what it waited for"),
    GIVEN(FIELD_LIST, "parts", part_fields, parts, "baskets"), FIELDS_END};
#undef RECORD

#define RECORD boil_plan_pour
static const field pour_fields[] = {
    SAME(start_s, "begins, from the start"), SAME(over_s, "for so long"), SAME(mass_kg, "all of it"), FIELDS_END};
#undef RECORD

#define RECORD breach
static const field breach_fields[] = {CHARS("words", words, "what is broken, and by how much"), FIELDS_END};
#undef RECORD
/* clang-format on */

static void dips(json *j, const char *name, const void *record)
{
    const told *t = record;
    json_list(j, name);
    for (size_t k = 0; k < t->proof->table.dips_count; k++) {
        const boil_plan_dip *d = &t->proof->table.dips[k];
        dip x = {.names = plan_dip_names(t->answer, &t->proof->table, k),
                 .enters_s = d->enters_s,
                 .leaves_s = d->leaves_s,
                 .likely_back_s = d->enters_s + t->proof->seen[k].likely_s,
                 .back_s = d->enters_s + t->proof->seen[k].gravest_s,
                 .mass_kg = d->mass_kg,
                 .reason = plan_dip_reason(t->answer, &t->proof->table, k),
                 .of = t,
                 .index = k};
        json_record(j, NULL, dip_fields, &x);
    }
    json_close(j);
}

static void pours(json *j, const char *name, const void *record)
{
    const boil_plan_timetable *t = &((const told *)record)->proof->table;
    json_records(j, name, pour_fields, t->pours, t->pours_count, sizeof *t->pours);
}

static void siftings(json *j, const char *name, const void *record)
{
    const boil_plan_timetable *t = &((const told *)record)->proof->table;
    json_records(j, name, pour_fields, t->salts, t->salts_count, sizeof *t->salts);
}

static void broken(json *j, const char *name, const void *record)
{
    const told *t = record;
    json_list(j, name);
    for (size_t i = 0; i < plan_broken_told(t->proof); i++) {
        breach b = {plan_broken(t->answer, t->proof, i)};
        json_record(j, NULL, breach_fields, &b);
    }
    json_close(j);
}

/* clang-format off */
WRITES(holds, told, bool, boil_plan_proof_holds(r->proof))
TELLS(double, last_out_s, told, r->proof->table.value.of[BOIL_PLAN_LAST_OUT_S])
TELLS(double, lateness_s, told, r->proof->table.value.of[BOIL_PLAN_LATENESS_S])
TELLS(double, slowest_s, told, plan_slowest_s(r->proof))
TELLS(double, boils_end_K, told, r->proof->boils_end_K)
TELLS(double, freeboard_m, told, r->proof->freeboard_m)
TELLS(double, drag_out_kg, told, r->proof->drag_out_kg)
TELLS(double, drag_out_salts_kg, told, r->proof->drag_out_salts_kg)
TELLS(double, drag_out_m, told, r->proof->drag_out_m)
TELLS(double, left_kg, told, r->proof->table.left_kg)
TELLS(double, owed_kg, told, r->proof->table.owed_kg)
TELLS(double, fuel_J, told, r->proof->fuel_J)

static const field told_fields[] = {
    GIVEN(FIELD_BOOL, "holds", NULL, holds, "it breaks no limit, and nothing above NOTICE is found in any run"),
    WORKED_OUT("last_out_s", last_out_s, "the last lift begins, from the start"),
    WORKED_OUT("lateness_s", lateness_s, "of what need not be out, weighed: 3 for normal, 1 for low"),
    WORKED_OUT("slowest_back_s", slowest_s, "longest that a boil is away, by the gravest of all runs; null: one is not back"),
    WORKED_OUT("boils_end_K", boils_end_K, "boiling point at the end, by the likely run"),
    WORKED_OUT("freeboard_min_m", freeboard_m, "least of all runs"),
    WORKED_OUT("drag_out_kg", drag_out_kg, "bath liquid that leaves with parts, by the likely run"),
    WORKED_OUT("drag_out_salts_kg", drag_out_salts_kg, "the salts in it"),
    WORKED_OUT("drag_out_m", drag_out_m, "by how much that lowers the level"),
    WORKED_OUT("water_left_kg", left_kg, "water still missing as the shift ends"),
    WORKED_OUT("salts_owed_kg", owed_kg, "salts carried out and not put back by then, where they are worth putting back"),
    WORKED_OUT("input_J", fuel_J, "fuel or current, by the likely run"),
    GIVEN(FIELD_LIST, "dips", dip_fields, dips, "in the order in which they go in"),
    GIVEN(FIELD_LIST, "pours", pour_fields, pours, "water by hand, only while it boils"),
    GIVEN(FIELD_LIST, "salts", pour_fields, siftings, "sifted in by hand, only while it boils, for what parts carry out"),
    GIVEN(FIELD_LIST, "broken", breach_fields, broken, "limits that it breaks"), FIELDS_END};
/* clang-format on */

static void best(json *j, const char *name, const void *record)
{
    const plan_answer *a = record;
    told t = {a, a->best};
    json_record(j, name, told_fields, &t);
}

static void listed(json *j, const char *name, const void *record)
{
    const plan_answer *a = record;
    told t = {a, &a->listed};
    json_record(j, name, told_fields, &t);
}

typedef struct {
    plan_words words;
    bool works, proved;
    double last_out_s;
} gives_line;

/* clang-format off */
#define RECORD gives_line
static const field gives_fields[] = {
    CHARS("words", words, "what gives"), BOOL("works", works, "a plan was found with it, by what the search knows, and carried out it did not fail"),
    BOOL("proved", proved, "it was carried out, and holds"),
    SAME(last_out_s, "the last lift begins then; null: it does not work"), FIELDS_END};
#undef RECORD
/* clang-format on */

static void failed(json *j, const char *name, const void *record)
{
    const plan_answer *a = record;
    json_list(j, name);
    for (size_t i = 0; i < plan_failed_count(a); i++) {
        breach b = {plan_failed(a, i)};
        json_record(j, NULL, breach_fields, &b);
    }
    json_close(j);
}

static void gives(json *j, const char *name, const void *record)
{
    const plan_answer *a = record;
    json_list(j, name);
    for (size_t i = 0; i < a->gives_count; i++) {
        const boil_plan_relaxation *r = &a->gives[i];
        bool works = r->works && r->proof != BOIL_PLAN_DISPROVED;
        gives_line g = {plan_gives(a, i), works, r->proof == BOIL_PLAN_PROVED, works ? r->last_out_s : (double)NAN};
        json_record(j, NULL, gives_fields, &g);
    }
    json_close(j);
}

/* What hung there already. */
typedef struct {
    plan_names names;
    double leaves_s, late_s;
    bool overdone;
} hung;

/* Where the shift stood. */
typedef struct {
    const plan_answer *of;
    double reads_K, set_K, ready_s, missing_kg, salts_gone_kg;
    bool boils;
} standing;

/* clang-format off */
#define RECORD hung
static const field hung_fields[] = {
    CHARS("names", names, "of what hangs in one place"), SAME(leaves_s, "its lift begins"),
    SAME(late_s, "behind its due time; 0: in time"), BOOL("overdone", overdone, "it hangs longer than it may"), FIELDS_END};
#undef RECORD
/* clang-format on */

static void hanging(json *j, const char *name, const void *record)
{
    const plan_answer *a = ((const standing *)record)->of;
    json_list(j, name);
    for (size_t k = 0; k < a->problem.hanging_count; k++) {
        const hung x = {plan_hanging_name(a, k), a->lifts[k].leaves_s, plan_hanging_late_s(a, k), plan_hanging_overdone(a, k)};
        json_record(j, NULL, hung_fields, &x);
    }
    json_close(j);
}

/* clang-format off */
#define RECORD standing
static const field standing_fields[] = {
    SAME(reads_K, "what a thermometer read"), BOOL("boils", boils, "it boiled all over"),
    SAME(set_K, "the boiling point as the shift began, which water is to bring back"),
    SAME(ready_s, "it boils from then on; 0: it does"), SAME(missing_kg, "water; less than 0: there is too much"),
    SAME(salts_gone_kg, "that parts carried out since the shift began, by level and strength"),
    GIVEN(FIELD_LIST, "hanging", hung_fields, hanging, "in the tank already, place by place"), FIELDS_END};
#undef RECORD
/* clang-format on */

static bool is_rest(const void *answer)
{
    return ((const plan_answer *)answer)->rest != NULL;
}

static void now(json *j, const char *name, const void *record)
{
    const plan_answer *a = record;
    if (!is_rest(a)) {
        json_text(j, name, NULL);
        return;
    }
    const standing x = {a,
                        a->rest->now->reads_K,
                        a->rest->under_way.set_K,
                        a->planning.bath.ready_s,
                        a->planning.bath.missing_kg,
                        a->planning.bath.owed_kg,
                        a->rest->now->boils};
    json_record(j, name, standing_fields, &x);
}

static bool is_asked(const void *odds)
{
    return ((const plan_odds *)odds)->asked > 0;
}

/* clang-format off */
#define RECORD boil_odds
static const field chance[] = {ODDS(), FIELDS_END};
#undef RECORD

#define RECORD boil_plan_odds
static const field counted[] = {
    OBJECT("holds", holds, chance, "it holds: every boil is back in time, nothing above NOTICE is found, parts have their minutes "
           "and are out when due"),
    OBJECT("all_back", back, chance, "every boil is back in time"), FIELDS_END};
#undef RECORD

#define RECORD plan_odds
static const field odds_fields[] = {
    SAME(asked, "share of draws in which it should hold"), BOOL("met", met, "it does"),
    COUNT("plans", plans, "that were counted, each by draws of its own; 0: none holds even without, or somebody ended it"),
    OBJECT("plan", counted, counted, "of the plan that is told"), OBJECT("without", without, counted, "of the plan without odds"),
    NUMBER("without_last_out_s", without_last_s, "the last lift of that begins, from the start"),
    BOOL("replanned", replanned, "the plan that is told is another than that"),
    CHARS("lacks", lacks, "why no further plan was made; empty: nothing said so"), FIELDS_END};
#undef RECORD

TELLS(double, limit_s, plan_answer, r->planning.bath.limit_s)
WRITES(valve_unlocked, plan_answer, bool, plan_valve_unlocked(r))
TELLS(double, seed, plan_answer, (double)r->seed)

#define RECORD plan_answer
static const field answer[] = {
    VERSION_FIELD, SCENARIO_FIELD, TITLE_FIELD,
    WORKED_OUT("recovery_limit_s", limit_s, "longest that a boil may be away"), WORKED_OUT("seed", seed, "of the search"),
    COUNT("timetables", tried, "that were tried"), COUNT("proofs", proofs, "of them that were carried out by all runs"),
    BOOL("stopped", stopped, "somebody ended the search"),
    GIVEN(FIELD_OBJECT, "plan", told_fields, best, "the best that was found"),
    GIVEN(FIELD_OBJECT, "list_order", told_fields, listed, "the jobs in their own order, each alone"),
    GIVEN(FIELD_BOOL, "valve_unlocked", NULL, valve_unlocked, "a water valve may be open while the bath does not boil: it has no interlock"),
    {.kind = FIELD_OBJECT, .key = "now", .inside = standing_fields, .when = is_rest, .by = now,
     .meaning = "where the shift stood, and all times are from then; null: it is a whole one"},
    OBJECT_IF("odds", odds, odds_fields, is_asked, "in how many draws of what is uncertain it holds; null: not asked"),
    GIVEN(FIELD_LIST, "failed", breach_fields, failed, "why there is no plan, whatever the order; empty: nothing says so"),
    GIVEN(FIELD_LIST, "gives", gives_fields, gives, "where none was found: what would have to give, one at a time"), FIELDS_END};
#undef RECORD

const document plan_documents[] = {
    {"--json", "the plan", answer, false}, {"--csv", "the run sheet, an act a line", act_fields, true}, {0}};
/* clang-format on */

void plan_csv(const void *of, FILE *to)
{
    const plan_answer *a = of;
    size_t n;
    plan_line *lines = plan_lines(a, &a->best->table, &n);
    csv_header(to, act_fields);
    for (size_t i = 0; i < n; i++) {
        act x = act_of(a, a->best, &lines[i]);
        csv_record(to, act_fields, &x);
    }
    free(lines);
}
