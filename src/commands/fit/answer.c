#include "commands/fit/answer.h"

#include <math.h>
#include <stdlib.h>

#include "analysis/trace.h"
#include "base/memory.h"
#include "base/program.h"
#include "case/checks.h"
#include "simulate/run.h"
#include "statistics/sampling.h"

typedef struct {
    scenario_text *text;
    fit_answer *answer;
    boil_simulation *own; /* in which each run is made */
} fitted;

static const double row_s = 10;

/* Which value of a run a reading is held against. */
static const size_t read_from[] = {
    [FIT_TEMPERATURE] = offsetof(boil_row, temperature_K), [FIT_LEVEL] = offsetof(boil_row, still_level_m)};

static boil_outcome misses_of(fitted *f, const scenario *s, double miss[])
{
    const boil_history *h;
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = row_s;
    if (!boil_check_case(&s->plant, &s->schedule, &o))
        return BOIL_BAD_INPUT;
    boil_outcome outcome = boil_run_in(&f->own, &s->plant, &s->schedule, &o, &h);
    if (outcome != BOIL_OK)
        return outcome;
    if (h->end != BOIL_RUN_DONE || h->rows_count == 0)
        return BOIL_OUT_OF_RANGE;
    for (size_t i = 0; i < f->answer->readings_count; i++) {
        const fit_reading *r = &f->answer->readings[i];
        miss[i] = boil_trace_at(h, read_from[r->kind], r->time_s) - r->measured;
    }
    return BOIL_OK;
}

static boil_outcome misses_with(fitted *f, const double value[], double miss[])
{
    scenario_change changes[BOIL_LEAST_SQUARES_PARAMETERS];
    scenario s;
    messages m;
    size_t count = f->answer->problem.parameters;
    for (size_t i = 0; i < count; i++)
        changes[i] = (scenario_change){fit_thing(f->answer, i), value[i]};
    messages_init(&m);
    boil_outcome outcome = scenario_of_text(f->text, changes, count, &s, &m);
    if (outcome == BOIL_OK)
        outcome = misses_of(f, &s, miss);
    messages_free(&m);
    scenario_free(&s);
    memory_good(outcome); /* a search goes on where a case cannot be made; not where it could not be tried */
    return outcome;
}

static boil_outcome residuals(void *context, const double value[], double residual[])
{
    fitted *f = context;
    boil_outcome outcome = misses_with(f, value, residual);
    for (size_t i = 0; outcome == BOIL_OK && i < f->answer->readings_count; i++)
        residual[i] *= f->answer->readings[i].weight;
    return outcome;
}

static void summarise(const fitted *f, const double miss[], fit_misses of[2])
{
    for (fit_kind kind = FIT_TEMPERATURE; kind <= FIT_LEVEL; kind++) {
        fit_misses *m = &of[kind];
        double sum = 0, count = 0;
        *m = (fit_misses){(double)NAN, (double)NAN, (double)NAN};
        for (size_t i = 0; i < f->answer->readings_count; i++) {
            if (f->answer->readings[i].kind != kind)
                continue;
            sum += miss[i] * miss[i];
            count++;
            if (!(fabs(miss[i]) <= fabs(m->largest)))
                *m = (fit_misses){0, miss[i], f->answer->readings[i].time_s};
        }
        m->rms = sqrt(sum / count);
    }
}

static bool take_readings(const fit_log *l, double end_s, const fit_weights *w, fit_answer *out)
{
    static const char *const names[] = {"temperature_K", "still_level_m"};
    out->readings = memory_needed(calloc(2 * l->count + 1, sizeof *out->readings));
    if (out->readings == NULL)
        return false;
    for (fit_kind kind = FIT_TEMPERATURE; kind <= FIT_LEVEL; kind++)
        for (size_t i = 0; i < l->count; i++) {
            const fit_log_row *r = &l->rows[i];
            double measured = kind == FIT_LEVEL ? r->level_m : r->temperature_K,
                   deviation = kind == FIT_LEVEL ? w->level_m : w->temperature_K;
            bool covered = r->time_s >= 0 && r->time_s <= end_s;
            out->left_out += !covered && kind == FIT_TEMPERATURE;
            if (covered && !isnan(measured))
                out->readings[out->readings_count++] =
                    (fit_reading){kind, names[kind], r->time_s, measured, 1 / deviation, (double)NAN, (double)NAN};
            if (kind == FIT_TEMPERATURE)
                out->temperatures = out->readings_count;
        }
    out->levels = out->readings_count - out->temperatures;
    return true;
}

/* Bounds, and what is known before. */
static void take_range(const boil_spread *x, size_t i, boil_least_squares_problem *p)
{
    boil_spread_moments(x, &p->mean[i], &p->deviation[i]);
    p->low[i] = boil_spread_at(x, 0);
    p->high[i] = boil_spread_at(x, 1);
    p->start[i] = p->mean[i];
}

static bool take_things(const scenario *s, fit_answer *out)
{
    size_t count = 0;
    for (size_t i = 0; i < s->uncertain_count; i++) {
        if (s->uncertain[i].spread.kind == BOIL_SPREAD_LISTED)
            continue;
        if (count < BOIL_LEAST_SQUARES_PARAMETERS) {
            take_range(&s->uncertain[i].spread, count, &out->problem);
            out->things[count] = i;
        }
        count++;
    }
    out->problem.parameters = count;
    if (count >= 1 && count <= BOIL_LEAST_SQUARES_PARAMETERS)
        return true;
    return program_complain("%s: name in [uncertain] what is to be fitted, 1 to %zu numbers, each with the range it may lie in",
                            s->path, BOIL_LEAST_SQUARES_PARAMETERS);
}

const uncertain_thing *fit_thing(const fit_answer *f, size_t i)
{
    return &f->scenario->uncertain[f->things[i]].thing;
}

double fit_left(const fit_answer *f, size_t i)
{
    const double reach = 2 * 1.96;
    return fmin(1, (f->fit.of[i].high - f->fit.of[i].low) / (reach * f->problem.deviation[i]));
}

static fit_end fit(fitted *f, fit_answer *out)
{
    double *miss = memory_needed(calloc(out->readings_count, sizeof *miss)), best[BOIL_LEAST_SQUARES_PARAMETERS];
    if (miss == NULL)
        return FITTING_FAILED;
    fit_end end = FITTING_NO_CASE;
    if (misses_with(f, out->problem.start, miss) == BOIL_OK) {
        summarise(f, miss, out->guess);
        for (size_t i = 0; i < out->readings_count; i++)
            out->readings[i].guess = out->readings[i].measured + miss[i];
        end = memory_good(boil_least_squares_run(&out->problem, &out->fit)) ? FITTING_DONE : FITTING_FAILED;
    }
    for (size_t i = 0; i < out->problem.parameters; i++)
        best[i] = out->fit.of[i].value;
    if (end == FITTING_DONE && misses_with(f, best, miss) == BOIL_OK) {
        summarise(f, miss, out->best);
        for (size_t i = 0; i < out->readings_count; i++)
            out->readings[i].best = out->readings[i].measured + miss[i];
    }
    free(miss);
    return end;
}

void fit_free(fit_answer *f)
{
    free(f->readings);
    f->readings = NULL;
}

fit_end fit_run(scenario_text *text, const scenario *s, const fit_log *l, const fit_weights *w, fit_answer *out)
{
    fitted f = {.text = text, .answer = out};
    *out = (fit_answer){.scenario = s, .weights = *w};
    if (!take_things(s, out))
        return FITTING_NOTHING;
    fit_end end = FITTING_FAILED;
    if (take_readings(l, s->schedule.duration_s, w, out)) {
        out->problem.residuals = residuals;
        out->problem.context = &f;
        out->problem.count = out->readings_count;
        out->problem.difference = 1e-2;
        out->problem.known = true;
        end = out->readings_count > out->problem.parameters ? fit(&f, out) : FITTING_FEW;
    }
    out->problem.context = NULL;
    boil_simulation_free(f.own);
    return end;
}
