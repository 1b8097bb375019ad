#include "base/boil.h"
#include "base/program.h"
#include "cli/argument.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "commands/size/answer.h"
#include "commands/size/output.h"

enum { RECOVER, LOAD, TABLE, INTERVAL, HEAVIEST, CSV, PLOT, UNITS, JSON, OPTIONS };

static const option options[OPTIONS] = {
    [RECOVER] = {"recover", "TIME", "longest time a load may stop the boil; default the scenario's limit"},
    [LOAD] = {"load", "QUANTITY",
              "one load of 1/4 in plate into the steady boil, of this mass or mass per volume of bath such as "
              "'1 lb per 2 gal', instead of the schedule's"},
    [TABLE] = {"table", NULL, "the heat for loads and plates of several weights and thicknesses"},
    [INTERVAL] = {"interval", NULL, "instead: the shortest interval between equal loads, with the scenario's heat"},
    [HEAVIEST] = {"heaviest", NULL, "instead: the heaviest loads, with the scenario's heat"},
    [CSV] = {"csv", "FILE", "with --table: also write it as CSV, in SI units; '-' writes it instead of the report"},
    [PLOT] = {"plot", "FILE",
              "draw recovery against heat with gnuplot: a .svg, .png or .pdf; '-' draws in the terminal instead of the "
              "report"},
    [UNITS] = {"units", "us|si", "units of the report; default us"},
    [JSON] = {"json", NULL, "the answer as JSON, in SI units"},
};

typedef struct {
    const given *given;
    double recover_s; /* 0: the scenario's */
    quantity load;
    bool load_given;
    outputs out;
    unit_system system;
} request;

static bool outputs_asked(const given *g, request *r)
{
    const char *const *v = g->values;
    if (!plot_read(v[PLOT], &r->out.plot))
        return false;
    if (v[PLOT] != NULL && (v[TABLE] != NULL || v[INTERVAL] != NULL || v[HEAVIEST] != NULL)) {
        program_complain("--plot draws recovery against heat: not with --table, --interval or --heaviest");
        return false;
    }
    if (v[CSV] != NULL && v[TABLE] == NULL) {
        program_complain("--csv goes with --table");
        return false;
    }
    return outputs_agree(&r->out);
}

static bool request_read(const given *g, request *r)
{
    static const bounds time = {"s", 1, 86400}, mass = {"kg", 0.001, 1e5}, per_volume = {"kg/m3", 0.001, 5000};
    *r = (request){
        .given = g, .load_given = g->values[LOAD] != NULL, .out = {.json = g->values[JSON] != NULL, .csv = g->values[CSV]}};
    if ((g->values[TABLE] != NULL) + (g->values[INTERVAL] != NULL) + (g->values[HEAVIEST] != NULL) > 1) {
        program_complain("give one of --table, --interval and --heaviest");
        return false;
    }
    if (g->values[UNITS] != NULL)
        unit_system_named(g->values[UNITS], &r->system);
    if (!argument_quantity("recover", g->values[RECOVER], DIM_TIME, &time, &r->recover_s))
        return false;
    if (!outputs_asked(g, r))
        return false;
    return !r->load_given ||
           argument_either("load", g->values[LOAD], DIM_MASS, &mass, DIM_CONCENTRATION, &per_volume, &r->load);
}

static bool draw(const request *r, const size_answer *a)
{
    size_curve c;
    picture_drawn drawn;
    picture_problem problem = {"out of memory"};
    if (size_curve_of(a, &c) != BOIL_OK || !size_picture(a, &c, r->system, r->out.plot.format, &drawn, &problem))
        return plot_failed(&r->out.plot, &problem);
    return plot_save(&r->out.plot, &drawn);
}

/* Without its picture the answer stands all the same. */
static int answer_heat(const request *r, const size_case *c, bool *written)
{
    size_answer a;
    int result = size_answer_of(c, &a);
    if (result != BOIL_OK)
        return result;
    *written = r->out.plot.path == NULL || draw(r, &a);
    if (r->out.json)
        size_json(&a, stdout);
    else if (!plot_is_terminal(&r->out.plot) || !*written)
        size_report(&a, r->system, stdout);
    size_answer_free(&a);
    return BOIL_OK;
}

static int answer_table(const request *r, const scenario *s, double limit_s, const quantity *load, bool *written)
{
    size_cells t;
    int result = size_cells_of(s, limit_s, load, &t);
    if (result != BOIL_OK)
        return result;
    *written = outputs_csv(&r->out, size_table_csv, &t);
    if (r->out.json)
        size_table_json(&t, stdout);
    else if (outputs_leave_report(&r->out))
        size_table_report(&t, r->system, stdout);
    return BOIL_OK;
}

static int answer(const request *r, const scenario *s, bool *written)
{
    size_case c;
    const quantity *load = r->load_given ? &r->load : NULL;
    double limit_s = r->recover_s > 0 ? r->recover_s : s->plant.limits.recovery_s;
    if (r->given->values[TABLE] != NULL)
        return answer_table(r, s, limit_s, load, written);
    int result = size_case_of(s, limit_s, load, &c);
    if (result == BOIL_OK)
        result = r->given->values[INTERVAL] != NULL   ? size_interval(&c, r->system, r->out.json, stdout)
                 : r->given->values[HEAVIEST] != NULL ? size_heaviest(&c, r->system, r->out.json, stdout)
                                                      : answer_heat(r, &c, written);
    size_case_free(&c);
    return result;
}

static int carry_out(const request *r, const scenario *s)
{
    bool written = true;
    int result = answer(r, s, &written);
    return result != BOIL_OK ? command_scenario_refuse(s, result) : written ? STATUS_DONE : STATUS_STOPPED;
}

static int run(const given *g)
{
    request r;
    scenario s;
    if (!request_read(g, &r))
        return STATUS_USAGE;
    int status = command_scenario_read(g->argument, &s) ? carry_out(&r, &s) : STATUS_USAGE;
    scenario_free(&s);
    return status;
}

const command command_size = {
    .name = "size",
    .argument = "FILE",
    .summary = "how much heat the loads need, and how much boils over",
    .description =
        "Runs the scenario again and again, from the calm losses up, to the smallest heat to the tank with which every "
        "load has the boil back in time; then up to where the bath boils over. A scenario without loads is sized for one: "
        "a quarter-inch plate of its usual heaviest load. Says so when no heat does both, and what would.",
    .example = PROGRAM_NAME " size tank.bath --recover 2min --load '1 lb per 2 gal'",
    .options = options,
    .options_count = OPTIONS,
    .documents = size_documents,
    .run = run,
};
