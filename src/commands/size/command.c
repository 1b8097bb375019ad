#include <stdlib.h>
#include <string.h>

#include "base/patience.h"
#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/size/answer.h"
#include "commands/size/grid.h"
#include "commands/size/sheet.h"

typedef struct {
    double recover_s;        /* 0: the scenario's */
    quantity load;           /* without text: the schedule's */
    unsigned long positions; /* 0: the scenario's */
    bool table, interval, heaviest, sheet;
    uncertain_grid down, across; /* of no steps: not asked */
    bool same_volume;
    output output;
} request;

/* clang-format off */
static const option options[] = {
    {"recover", "TIME", "longest time a load may stop the boil; default the scenario's limit", OPTION_QUANTITY,
     INTO(recover_s), DIM_TIME, .within = {"s", 1, 86400}},
    {"load", "QUANTITY", "one load of 1/4 in plate into the steady boil, of this mass or mass per volume of bath such as "
     "'1 lb per 2 gal', instead of the schedule's", OPTION_EITHER, INTO(load),
     DIM_MASS, {"kg", 0.001, 1e5}, DIM_CONCENTRATION, {"kg/m3", 0.001, 5000}},
    {"table", NULL, "the heat for loads and plates of several weights and thicknesses", OPTION_FLAG, INTO(table)},
    {"down", "KEY = A to B : N", "with --table: over two numbers of the scenario instead, this one in N lines, such as 'tank level = "
     "12 in to 28 in : 5'", OPTION_READ, INTO(down), .read = uncertain_grid_read},
    {"across", "KEY = A to B : N", "and this one in N columns", OPTION_READ, INTO(across), .read = uncertain_grid_read},
    {"same-volume", NULL, "with --down: the level follows the tank's other measures, or they it, and the rim goes with the level",
     OPTION_FLAG, INTO(same_volume)},
    {"interval", NULL, "instead: the shortest interval between equal loads, with the scenario's heat", OPTION_FLAG,
     INTO(interval)},
    {"heaviest", NULL, "instead: the heaviest loads, with the scenario's heat", OPTION_FLAG, INTO(heaviest)},
    {"sheet", NULL, "instead: the designer's sheet, what to order for this heat", OPTION_FLAG, INTO(sheet)},
    {"positions", "COUNT", "with --interval: places for loads side by side, instead of the scenario's", OPTION_COUNT,
     INTO(positions), .within = {NULL, 1, BOIL_POSITIONS_MAX}},
    OUTPUT_CSV(request, "with --table: also write it as CSV, in SI units; '-' writes it instead of the report"),
    OUTPUT_PLOT_INSTEAD(request, "draw recovery against heat"),
    OUTPUT_UNITS(request, "report"),
    OUTPUT_JSON(request, "the answer as JSON, in SI units"),
    INPUT_SHEET(request),
};
/* clang-format on */

static int answer_heat(const size_case *c, const output *o, int *status)
{
    static const output_writers writers = {.text = size_report, .json = &size_documents[0], .draw = size_picture};
    size_answer a;
    int result = size_answer_of(c, &a);
    if (result == BOIL_OK)
        result = size_opening_of(&a);
    if (result == BOIL_OK)
        *status = output_write(&writers, o, &a, STATUS_DONE);
    boil_heater_window_free(&a.heats);
    return result;
}

static int answer_sheet(const size_case *c, const output *o, int *status)
{
    static const output_writers writers = {.text = sheet_report, .json = &size_documents[4]};
    size_answer a;
    sheet *s = malloc(sizeof *s);
    int result = s != NULL ? size_answer_of(c, &a) : BOIL_NO_MEMORY;
    if (result == BOIL_OK) {
        result = sheet_of(&a, s);
        if (result == BOIL_OK)
            *status = output_write(&writers, o, s, STATUS_DONE);
        boil_heater_window_free(&a.heats);
    }
    free(s);
    return result;
}

static int answer_heaviest(const size_case *c, const output *o, int *status)
{
    static const output_writers writers = {.text = size_heaviest_report, .json = &size_documents[1]};
    size_heaviest h;
    int result = size_heaviest_of(c, &h);
    if (result == BOIL_OK)
        *status = output_write(&writers, o, &h, STATUS_DONE);
    return result;
}

static int answer_interval(const size_case *c, const output *o, int *status)
{
    static const output_writers writers = {.text = size_interval_report, .json = &size_documents[2]};
    size_interval i;
    int result = size_interval_of(c, &i);
    if (result == BOIL_OK)
        *status = output_write(&writers, o, &i, STATUS_DONE);
    size_interval_free(&i);
    return result;
}

static int answer_table(const scenario *s, double limit_s, const quantity *load, const output *o, int *status)
{
    static const output_writers writers = {.text = size_table_report, .json = &size_documents[3], .csv = size_table_csv};
    size_cells t;
    int result = size_cells_of(s, limit_s, load, &t);
    if (result == BOIL_OK)
        *status = output_write(&writers, o, &t, STATUS_DONE);
    return result;
}

static int answer_grid(const request *r, scenario_text *text, const scenario *s)
{
    static const output_writers writers = {.text = size_grid_report, .json = &size_documents[5], .csv = size_grid_csv};
    const size_grid_question q = {text,           &r->down,     &r->across,
                                  r->same_volume, r->recover_s, r->load.text != NULL ? &r->load : NULL};
    size_grid *a = malloc(sizeof *a);
    int result = a != NULL ? size_grid_of(&q, s, a) : BOIL_NO_MEMORY;
    int status = result == BOIL_OK ? output_write(&writers, &r->output, a, STATUS_DONE) : command_scenario_refuse(s, result);
    free(a);
    return status;
}

/* A number that this scenario has, and whose cells can be walked through. */
static bool grid_fits(const scenario *s, const uncertain_grid *g)
{
    const uncertain_thing *t = &g->over.thing;
    if (g->steps > SIZE_GRID_STEPS)
        return program_complain("'%s': at most %d steps, each is a search", t->words, (int)SIZE_GRID_STEPS);
    if (!scenario_has(s, t))
        return program_complain("'%s' has no value in this scenario", t->words);
    return true;
}

/* Of one number twice the second alone would count. */
static bool grid_is_of_two(const request *r)
{
    const char *down = r->down.over.thing.words, *across = r->across.over.thing.words;
    return strcmp(down, across) != 0 || program_complain("--down and --across are both '%s': a table is of two numbers", down);
}

static int run_grid(const given *g, request *r)
{
    scenario_text text;
    scenario s;
    int status = STATUS_USAGE;
    if (!options_take(g, r) || !output_agrees(&r->output, g) || !grid_is_of_two(r))
        return status;
    bool good = command_scenario_text(&r->output, g->argument, &text, &s);
    if (good && grid_fits(&s, &r->down) && grid_fits(&s, &r->across)) {
        patience_begin();
        status = answer_grid(r, &text, &s);
    }
    scenario_free(&s);
    scenario_text_free(&text);
    return status;
}

static int answer(void *record, const scenario *s)
{
    const request *r = record;
    const quantity *load = r->load.text != NULL ? &r->load : NULL;
    double limit_s = r->recover_s > 0 ? r->recover_s : s->plant.limits.recovery_s;
    size_case c;
    int result, status = STATUS_DONE;
    if (r->table)
        result = answer_table(s, limit_s, load, &r->output, &status);
    else {
        result = size_case_of(s, limit_s, load, &c);
        if (result == BOIL_OK)
            size_case_place(&c, (double)r->positions);
        if (result == BOIL_OK)
            result = (r->sheet      ? answer_sheet
                      : r->interval ? answer_interval
                      : r->heaviest ? answer_heaviest
                                    : answer_heat)(&c, &r->output, &status);
        size_case_free(&c);
    }
    return result == BOIL_OK ? status : command_scenario_refuse(s, result);
}

static bool one_question(const given *g)
{
    bool table = options_given(g, "table");
    int instead = table + options_given(g, "interval") + options_given(g, "heaviest") + options_given(g, "sheet");
    if (instead > 1)
        return program_complain("give one of --table, --interval, --heaviest and --sheet");
    if (instead > 0 && options_given(g, "plot"))
        return program_complain("--plot draws recovery against heat: not with --table, --interval, --heaviest or --sheet");
    if (options_given(g, "positions") && !options_given(g, "interval"))
        return program_complain("--positions goes with --interval");
    bool down = options_given(g, "down"), across = options_given(g, "across");
    if (down != across || (down && !table))
        return program_complain("--table over two numbers takes both --down and --across");
    if (options_given(g, "same-volume") && !down)
        return program_complain("--same-volume goes with --down and --across");
    if (options_given(g, "csv") && !table)
        return program_complain("--csv goes with --table");
    return true;
}

static int run(const given *g)
{
    request r = {0};
    if (!one_question(g))
        return STATUS_USAGE;
    return options_given(g, "down") ? run_grid(g, &r) : command_scenario_answer(g, &r, &r.output, answer);
}

const command command_size = {
    .name = "size",
    .argument = "FILE",
    .summary = "how much heat the loads need, and how much boils over",
    .description =
        "Runs the scenario again and again, from the calm losses up, to the smallest heat to the tank with which every load "
        "has the boil back in time, by all laws of mixing; then up to where the freeboard is used up, where a water control "
        "of its own lets in too little, and where the bath boils over. The bath begins at its boil and is held as a shop holds "
        "it: a valve that holds the "
        "boiling point takes the place of the schedule's water. A scenario without loads is sized for one: a quarter-inch "
        "plate of its usual heaviest load. Says so when no heat does both, and what would.",
    .example = PROGRAM_NAME " size tank.bath --recover 2min --load '1 lb per 2 gal'",
    COMMAND_PARTS(size_documents),
};
