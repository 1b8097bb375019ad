#include <math.h>

#include "base/words.h"
#include "commands/plan/answer.h"
#include "files/whole_file.h"

/* Sections whose lines were the plan's question, or are written anew. */
static bool is_question(const char *at, const char *end)
{
    static const char *const sections[] = {"[plan]", "[jobs]", "[now]", "[schedule]", "[breaks]"};
    for (size_t i = 0; i < sizeof sections / sizeof sections[0]; i++)
        if (words_same(at, (size_t)(end - at), sections[i]))
            return true;
    return false;
}

/* A setting that the rest of a shift begins with anew, where it begins and how the bath is; or how well that was known. */
static bool is_begun_anew(const plan_answer *a, size_t line)
{
    const scenario *s = a->scenario;
    if (a->rest == NULL)
        return false;
    for (size_t i = 0; i < key_count(); i++)
        if (s->settings[i].line == line && (plan_rest_reads(key_at(i)) || key_at(i) == key_named("", "start")))
            return true;
    for (size_t i = 0; i < s->uncertain_count; i++)
        if (s->uncertain[i].line == line && plan_rest_reads(s->uncertain[i].thing.key))
            return true;
    return false;
}

static void write_quantity(const plan_answer *a, const char *words, unit_dimension d, double si, FILE *to)
{
    const char *measure = format_unit(a->system, d);
    fprintf(to, "%s = %.7g %s\n", words, unit_from_si(d, measure, si), measure);
}

/* Behind the header of a section. */
static void write_begun(const plan_answer *a, const char *at, const char *end, FILE *to)
{
    const boil_plant *p = &a->scenario->plant;
    if (words_same(at, (size_t)(end - at), "[tank]"))
        write_quantity(a, "level", DIM_LENGTH, p->tank.level_m, to);
    if (!words_same(at, (size_t)(end - at), "[bath]"))
        return;
    write_quantity(a, "boiling point", DIM_TEMPERATURE, p->charge.value, to);
    if (p->charge.temperature_K > 0)
        write_quantity(a, "temperature", DIM_TEMPERATURE, p->charge.temperature_K, to);
}

/* What hangs there is lifted by the sheet: it takes no heat any more, and no run has to know of it. */
static void write_hanging(const plan_answer *a, FILE *to)
{
    for (size_t i = 0; i < a->problem.hanging_count; i++)
        fprintf(to, "# in the tank already: %s, out at %s\n", plan_hanging_name(a, i).text,
                plan_clock_at(a, a->lifts[i].leaves_s).text);
}

/* The scenario as it stands, without what was asked and with a duration. */
static void write_settings(const plan_answer *a, const source *text, FILE *to)
{
    bool left_out = false, above = true;
    fprintf(to, "duration = %.0f s\n", ceil(a->best->carried.schedule.duration_s));
    if (a->rest != NULL)
        fprintf(to, "start = %s\n", plan_clock_at(a, 0).text);
    for (size_t i = 0; i < text->count; i++) {
        const source_line *l = &text->lines[i];
        const char *at = words_skip(l->text, l->text + l->length), *end = words_trim(at, l->text + l->length);
        if (at < end && *at == '[') {
            const char *comment = cursor_comment(at, end);
            left_out = is_question(at, words_trim(at, comment));
            above = false;
        }
        if (left_out || (above && words_taken(at, end, "duration") > 0) || is_begun_anew(a, i + 1))
            continue;
        fprintf(to, "%.*s\n", (int)l->length, l->text);
        if (a->rest != NULL && at < end && *at == '[')
            write_begun(a, at, words_trim(at, cursor_comment(at, end)), to);
    }
}

/* Those that begin before it is over. */
static void write_breaks(const plan_answer *a, FILE *to)
{
    const scenario *s = a->scenario;
    double over_s = a->best->carried.schedule.duration_s;
    bool any = false;
    for (size_t i = 0; i < s->schedule.breaks_count; i++) {
        const boil_break *b = &s->schedule.breaks[i];
        if (b->from_s >= over_s || !(b->to_s > 0))
            continue;
        const char *name = s->wording.breaks[i].text;
        fprintf(to, "%s%s to %s%s%s\n", any ? "" : "\n[breaks]\n", plan_clock_at(a, fmax(0, b->from_s)).text,
                plan_clock_at(a, fmin(b->to_s, floor(over_s))).text, name[0] != '\0' ? " " : "", name);
        any = true;
    }
}

static void write_load(const plan_answer *a, const boil_action *act, size_t part, FILE *to)
{
    const boil_plan_part *p = &a->planning.parts.list[part];
    const char *measure = format_unit(a->system, DIM_MASS);
    fprintf(to, "%s  when boiling load %.7g %s%s", plan_clock_at(a, act->time_s).text,
            unit_from_si(DIM_MASS, measure, p->load.mass_kg), measure, a->scenario->jobs.list[p->job].steel);
    if (p->load.pieces > 0)
        fprintf(to, ", %.0f pieces", p->load.pieces);
    fprintf(to, ", for %.0f s, position %d\n", act->is.load.immersed_s, act->position);
}

static void write_pour(const plan_answer *a, const boil_action *act, const char *what, double mass_kg, double over_s, FILE *to)
{
    const char *measure = format_unit(a->system, DIM_MASS);
    fprintf(to, "%s  when boiling %s %.5g %s over %.0f s, while boiling, no later than %s\n",
            plan_clock_at(a, act->time_s).text, what, unit_from_si(DIM_MASS, measure, mass_kg), measure, over_s,
            plan_clock_at(a, act->pour.no_later_s).text);
}

static void write_acts(const plan_answer *a, FILE *to)
{
    const boil_plan_carried *c = &a->best->carried;
    size_t told = (size_t)-1;
    write_breaks(a, to);
    fputs("\n[schedule]\n", to);
    write_hanging(a, to);
    for (size_t i = 0; i < c->schedule.count; i++) {
        const boil_plan_act *act = &c->acts[i];
        const boil_action *is = &c->schedule.actions[i];
        if (!act->is_pour && !act->is_salts && act->dip != told) {
            told = act->dip;
            fprintf(to, "# dip %zu: %s, %s\n", act->dip + 1, plan_dip_names(a, &a->best->table, act->dip).text,
                    plan_dip_reason(a, &a->best->table, act->dip).text);
        }
        if (act->is_pour)
            write_pour(a, is, "water", is->is.water.mass_kg, is->is.water.over_s, to);
        else if (act->is_salts)
            write_pour(a, is, "salts", is->is.salts.mass_kg, is->is.salts.over_s, to);
        else
            write_load(a, is, act->part, to);
    }
}

bool plan_write(const plan_answer *a, const scenario_text *read, const char *path)
{
    whole_file f;
    if (!whole_file_open(&f, path))
        return false;
    if (!boil_plan_proof_holds(a->best)) {
        fputs("# This is no plan to work by. It breaks:\n", f.to);
        for (size_t i = 0; i < plan_broken_told(a->best); i++)
            fprintf(f.to, "# - %s\n", plan_broken(a, a->best, i).text);
    }
    for (size_t i = 0; plan_told(a, i).text[0] != '\0'; i++)
        fprintf(f.to, "# %s\n", plan_told(a, i).text);
    write_settings(a, &read->text, f.to);
    write_acts(a, f.to);
    return whole_file_close(&f);
}
