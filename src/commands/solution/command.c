#include <math.h>
#include <stdlib.h>

#include "base/program.h"
#include "base/memory.h"
#include "cli/commands.h"
#include "commands/solution/answer.h"
#include "scenario/scenario.h"

typedef struct {
    scenario bath; /* the settings that options and scenarios share */
    bool table;
    quantity from, to, step;
    output output;
} request;

static bool row_value(cursor *c, void *into)
{
    return quantity_read(c, "row", UNIT_OF(DIM_FRACTION) | UNIT_OF(DIM_CONCENTRATION) | UNIT_OF(DIM_TEMPERATURE), into) &&
           cursor_expect_end(c);
}

static bool row_step(cursor *c, void *into)
{
    return quantity_read(c, "step", UNIT_OF(DIM_FRACTION) | UNIT_OF(DIM_CONCENTRATION) | UNIT_OF(DIM_DIFFERENCE), into) &&
           cursor_expect_end(c);
}

/* Where a scenario says the same: the values are read by the same rules. */
#define AS_SCENARIO(of, words) OPTION_SETTING, INTO(bath), .section = of, .key = words

/* clang-format off */
static const option options[] = {
    {"salts", "BLEND", "the dry blend by mass, such as '80 % NaOH, 15 % NaNO3, 5 % NaNO2'", AS_SCENARIO("bath", "salts")},
    {"salt-fraction", "PERCENT", "salts by mass of bath", AS_SCENARIO("bath", "salt fraction")},
    {"strength", "QUANTITY", "salts per volume of bath at its boiling point", AS_SCENARIO("bath", "strength")},
    {"boiling-point", "TEMPERATURE", "where it boils; give one of these three", AS_SCENARIO("bath", "boiling point")},
    {"temperature", "TEMPERATURE", "where the properties are wanted; default at the boil", AS_SCENARIO("bath", "temperature")},
    {"pressure", "QUANTITY", "station pressure, not reduced to sea level; default 1 atm",
     AS_SCENARIO("room", "station pressure")},
    {"altitude", "LENGTH", "above sea level, instead of the pressure", AS_SCENARIO("room", "altitude")},
    {"elevation-factor", "NUMBER", "boiling point's rise above water's, relative to the correlation",
     AS_SCENARIO("bath", "elevation factor")},
    {"table", NULL, "instead of one strength: rows over salts by mass, strength or boiling point", OPTION_FLAG, INTO(table)},
    {"from", "QUANTITY", "the first row, such as '40 %', '5 lb/gal' or '270 degF'", OPTION_READ, INTO(from), .read = row_value},
    {"to", "QUANTITY", "the last row, of the same kind", OPTION_READ, INTO(to), .read = row_value},
    {"step", "QUANTITY", "from row to row", OPTION_READ, INTO(step), .read = row_step},
    OUTPUT_CSV(request, "also as CSV, in SI units; '-' writes it instead of the text"),
    OUTPUT_PLOT(request, "with --table: draw it with gnuplot: a .svg, .png or .pdf; '-' draws in the terminal instead"),
    OUTPUT_UNITS(request, "picture"),
    OUTPUT_JSON(request, "as JSON, in SI units"),
};
/* clang-format on */

static bool given_together(const given *g)
{
    bool table = options_given(g, "table"), from = options_given(g, "from"), to = options_given(g, "to"),
         step = options_given(g, "step");
    int strengths = options_given(g, "salt-fraction") + options_given(g, "strength") + options_given(g, "boiling-point");
    if (!options_given(g, "salts"))
        return program_complain("'solution' needs --salts, such as --salts '80 %% NaOH, 15 %% NaNO3, 5 %% NaNO2'");
    if (options_given(g, "pressure") && options_given(g, "altitude"))
        return program_complain("give --pressure or --altitude, not both");
    if (options_given(g, "plot") && !table)
        return program_complain("--plot draws a table: it goes with --table");
    if (!table && (from || to || step))
        return program_complain("--from, --to and --step go with --table");
    if (table && (strengths != 0 || !from || !to || !step))
        return program_complain(
            "--table needs --from, --to and --step, and takes no --salt-fraction, --strength or --boiling-point");
    return table || strengths == 1 ||
           program_complain("'solution' needs one of --salt-fraction, --strength and --boiling-point");
}

static bool table_of(const request *r, solution_table *t)
{
    unit_dimension over = r->from.dimension, of_step = over == DIM_TEMPERATURE ? DIM_DIFFERENCE : over;
    if (r->to.dimension != over || r->step.dimension != of_step)
        return program_complain("--from, --to and --step must all be of salts by mass, of strength, or of boiling points");
    *t = (solution_table){over, r->from.si, r->to.si, r->step.si};
    if (!(t->to > t->from && t->step > 0 && (t->to - t->from) / t->step < (double)LOOK_UP_ROWS_MOST))
        return program_complain("--table must rise from --from to --to by a --step that makes at most 1000 rows");
    return true;
}

static const output_writers one_writers = {.text = solution_report, .json = &solution_documents[0], .csv = solution_csv};
static const output_writers table_writers = {
    .text = solution_table_report, .json = &solution_documents[1], .csv = solution_csv, .draw = solution_picture};

static int answer_table(const request *r)
{
    solution_answers a = {.plant = &r->bath.plant};
    solution_table t;
    if (!table_of(r, &t))
        return STATUS_USAGE;
    a.rows = solution_rows(a.plant, &t, &a.count);
    int status = a.rows != NULL ? output_write(&table_writers, &r->output, &a, STATUS_DONE) : STATUS_USAGE;
    free(a.rows);
    return status;
}

static int answer(const given *g, request *r)
{
    boil_plant *p = &r->bath.plant;
    if (!options_take(g, r) || !output_agrees(&r->output, g))
        return STATUS_USAGE;
    p->charge.basis = options_given(g, "strength")        ? BOIL_INITIAL_BY_STRENGTH
                      : options_given(g, "salt-fraction") ? BOIL_INITIAL_BY_SALT_FRACTION
                                                          : BOIL_INITIAL_BY_BOILING_POINT;
    if (options_given(g, "altitude"))
        p->ambient.pressure_Pa = boil_ambient_pressure_at_altitude(r->bath.altitude_m);
    const char *problem = boil_plant_problem(p);
    if (problem != NULL) {
        program_complain("%s", problem);
        return STATUS_USAGE;
    }
    if (r->table)
        return answer_table(r);
    solution_answers a = {.plant = p, .rows = &a.one, .count = 1};
    return look_up(p, &a.one) ? output_write(&one_writers, &r->output, &a, STATUS_DONE) : STATUS_USAGE;
}

static int run(const given *g)
{
    if (!given_together(g))
        return STATUS_USAGE;
    request r = {.bath = {.plant = boil_plant_default(), .altitude_m = (double)NAN}};
    scenario *s = &r.bath;
    boil_tank *t = &s->plant.tank;
    t->length_m = t->width_m = t->depth_m = 1; /* rules for blend, temperature and factor are the plant's: it needs a tank */
    t->level_m = 0.5;
    s->settings = memory_needed(calloc(key_count(), sizeof *s->settings));
    int status = s->settings != NULL ? answer(g, &r) : STATUS_STOPPED;
    scenario_free(s);
    return status;
}

const command command_solution = {
    .name = "solution",
    .summary = "look-up: boiling point, strength, density, heats, or a table of them",
    .description = "Properties of a bath of the given salts, at its boiling point or below it, at sea level or higher up. It "
                   "needs the salts and one of salt fraction, strength and boiling point, or a table over one of these.",
    .example = PROGRAM_NAME " solution --salts '80 % NaOH, 20 % NaNO3' --boiling-point '285 degF'",
    COMMAND_PARTS(solution_documents),
};
