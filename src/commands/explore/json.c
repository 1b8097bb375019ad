
#include "base/json.h"
#include "base/program.h"
#include "commands/explore/statistics.h"
#include "commands/explore/output.h"

static void input(json *j, const explore_input *i)
{
    json_object(j, NULL);
    json_text(j, "name", i->words);
    json_text(j, "spread", i->as_written);
    json_close(j);
}

static void chance(json *j, const boil_odds *o)
{
    json_number(j, "chance", o->chance);
    json_number(j, "low", o->low);
    json_number(j, "high", o->high);
    json_number(j, "count", (double)o->count);
}

static void findings(json *j, const explore_answer *s, size_t cell)
{
    explore_finding found[EXPLORE_FINDINGS_MAX];
    size_t n = explore_findings_of(s, cell, found);
    json_list(j, "findings");
    for (size_t i = 0; i < n; i++) {
        json_object(j, NULL);
        json_text(j, "id", found[i].id);
        json_text(j, "severity", boil_severity_word(found[i].gravest));
        chance(j, &found[i].odds);
        json_close(j);
    }
    json_close(j);
}

static void percentiles(json *j, const explore_answer *s, size_t cell)
{
    static const struct {
        const char *name;
        double share;
    } shares[] = {{"p5", 0.05}, {"p25", 0.25}, {"p50", 0.5}, {"p75", 0.75}, {"p95", 0.95}};
    json_object(j, "percentiles");
    for (size_t output = EXPLORE_SLOWEST_S; output < s->outputs; output++) {
        if (output >= EXPLORE_FIXED && output < EXPLORE_FIXED + s->findings)
            continue;
        explore_spread p = explore_spread_of(s, cell, output);
        json_object(j, explore_output_name(s, output).text);
        for (size_t i = 0; i < sizeof shares / sizeof shares[0]; i++)
            json_number(j, shares[i].name, explore_spread_at(&p, shares[i].share));
        json_number(j, "never", (double)p.never);
        json_close(j);
        explore_spread_free(&p);
    }
    json_close(j);
}

static void estimate(json *j, const char *name, const boil_estimate *e)
{
    json_object(j, name);
    json_number(j, "value", e->value);
    json_number(j, "half_width", e->half_width);
    json_close(j);
}

static void indices(json *j, const explore_answer *s)
{
    json_object(j, "indices");
    for (size_t output = EXPLORE_SLOWEST_S; output < s->outputs; output++) {
        if (output >= EXPLORE_FIXED && output < EXPLORE_FIXED + s->findings)
            continue;
        boil_sensitivity x = explore_sensitivity(s, output);
        json_object(j, explore_output_name(s, output).text);
        json_number(j, "points", (double)x.points);
        for (size_t i = 0; i < s->input_count; i++) {
            json_object(j, s->inputs[i].words);
            estimate(j, "first", &x.first[i]);
            estimate(j, "total", &x.total[i]);
            json_close(j);
        }
        json_close(j);
    }
    json_close(j);
}

static void cells(json *j, const explore_answer *s)
{
    json_list(j, "cells");
    for (size_t cell = 0; cell < explore_cells(s); cell++) {
        json_object(j, NULL);
        if (s->grid.count > 0)
            json_number(j, "value", explore_grid_value(s, cell));
        boil_odds back = explore_odds(s, cell, EXPLORE_BACK_SHARE, 1);
        json_object(j, "all_loads_back");
        chance(j, &back);
        json_close(j);
        findings(j, s, cell);
        percentiles(j, s, cell);
        json_close(j);
    }
    json_close(j);
}

void explore_json(const explore_answer *s, FILE *to)
{
    json j = json_to(to);
    json_object(&j, NULL);
    json_text(&j, "version", PROGRAM_VERSION);
    json_text(&j, "scenario", s->path);
    json_text(&j, "title", s->title);
    json_number(&j, "runs", (double)explore_count(s, true));
    json_number(&j, "runs_planned", (double)explore_count(s, false));
    json_number(&j, "seed", (double)s->plan.seed);
    json_bool(&j, "central_mixing_only", !explore_varies_mixing(s));
    json_text(&j, "grid", s->grid.count > 0 ? s->grid.input.words : NULL);
    json_list(&j, "inputs");
    for (size_t i = 0; i < s->input_count; i++)
        input(&j, &s->inputs[i]);
    json_close(&j);
    cells(&j, s);
    if (s->grid.count == 0 && s->input_count > 0)
        indices(&j, s);
    json_close(&j);
}
