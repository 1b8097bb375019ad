#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/boil.h"
#include "base/program.h"
#include "base/whole_file.h"
#include "cli/argument.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "commands/solution/output.h"

enum {
    SALTS,
    SALT_FRACTION,
    STRENGTH,
    BOILING_POINT,
    TEMPERATURE,
    PRESSURE,
    ALTITUDE,
    ELEVATION,
    TABLE,
    FROM,
    TO,
    STEP,
    CSV,
    PLOT,
    UNITS,
    JSON,
    OPTIONS
};

static const option options[OPTIONS] = {
    [SALTS] = {"salts", "BLEND", "the dry blend by mass, such as '80 % NaOH, 15 % NaNO3, 5 % NaNO2'"},
    [SALT_FRACTION] = {"salt-fraction", "PERCENT", "salts by mass of bath"},
    [STRENGTH] = {"strength", "QUANTITY", "salts per volume of bath at its boiling point"},
    [BOILING_POINT] = {"boiling-point", "TEMPERATURE", "where it boils; give one of these three"},
    [TEMPERATURE] = {"temperature", "TEMPERATURE", "where the properties are wanted; default at the boil"},
    [PRESSURE] = {"pressure", "QUANTITY", "station pressure, not reduced to sea level; default 1 atm"},
    [ALTITUDE] = {"altitude", "LENGTH", "above sea level, instead of the pressure"},
    [ELEVATION] = {"elevation-factor", "NUMBER", "boiling point's rise above water's, relative to the correlation"},
    [TABLE] = {"table", NULL, "instead of one strength: rows over salts by mass, strength or boiling point"},
    [FROM] = {"from", "QUANTITY", "the first row, such as '40 %', '5 lb/gal' or '270 degF'"},
    [TO] = {"to", "QUANTITY", "the last row, of the same kind"},
    [STEP] = {"step", "QUANTITY", "from row to row"},
    [CSV] = {"csv", "FILE", "also as CSV, in SI units; '-' writes it instead of the text"},
    [PLOT] = {"plot", "FILE", "with --table: draw it with gnuplot: a .svg, .png or .pdf; '-' draws in the terminal instead"},
    [UNITS] = {"units", "us|si", "units of the picture; default us"},
    [JSON] = {"json", NULL, "as JSON, in SI units"},
};

/* Where a scenario says the same: the values are read by the same rules. */
static const struct {
    int option;
    const char *section, *words;
} settings[] = {
    {SALTS, "bath", "salts"},
    {SALT_FRACTION, "bath", "salt fraction"},
    {STRENGTH, "bath", "strength"},
    {BOILING_POINT, "bath", "boiling point"},
    {TEMPERATURE, "bath", "temperature"},
    {PRESSURE, "room", "station pressure"},
    {ALTITUDE, "room", "altitude"},
    {ELEVATION, "bath", "elevation factor"},
};

static bool complain(const char *what)
{
    program_complain("%s", what);
    return false;
}

static bool table_given_together(const given *g, int strengths)
{
    if (g->values[TABLE] == NULL)
        return complain("--from, --to and --step go with --table");
    if (strengths != 0 || g->values[FROM] == NULL || g->values[TO] == NULL || g->values[STEP] == NULL)
        return complain("--table needs --from, --to and --step, and takes no --salt-fraction, --strength or --boiling-point");
    return true;
}

static bool given_together(const given *g)
{
    int strengths = (g->values[SALT_FRACTION] != NULL) + (g->values[STRENGTH] != NULL) + (g->values[BOILING_POINT] != NULL);
    bool table = g->values[TABLE] != NULL || g->values[FROM] != NULL || g->values[TO] != NULL || g->values[STEP] != NULL;
    if (g->values[SALTS] == NULL)
        return complain("'solution' needs --salts, such as --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2'");
    if (g->values[PRESSURE] != NULL && g->values[ALTITUDE] != NULL)
        return complain("give --pressure or --altitude, not both");
    if (g->values[PLOT] != NULL && g->values[TABLE] == NULL)
        return complain("--plot draws a table: it goes with --table");
    if (table)
        return table_given_together(g, strengths);
    return strengths == 1 || complain("'solution' needs one of --salt-fraction, --strength and --boiling-point");
}

static bool settings_read(const given *g, scenario *s)
{
    bool good = true;
    for (size_t i = 0; i < sizeof settings / sizeof settings[0]; i++) {
        const char *text = g->values[settings[i].option];
        const key *k = key_find(settings[i].section, settings[i].words, strlen(settings[i].words));
        if (text != NULL && k != NULL)
            good = argument_setting(options[settings[i].option].name, text, k, s) && good;
    }
    s->plant.charge.basis = g->values[STRENGTH] != NULL        ? BOIL_BY_STRENGTH
                            : g->values[SALT_FRACTION] != NULL ? BOIL_BY_SALT_FRACTION
                                                               : BOIL_BY_BOILING_POINT;
    if (g->values[ALTITUDE] != NULL && good)
        s->plant.ambient.pressure_Pa = boil_ambient_pressure_at_altitude(s->altitude_m);
    return good;
}

/* Rows ------------------------------------------------------------------------------------------------------------ */

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

static bool table_read(const given *g, solution_table *t)
{
    quantity from, to, step;
    if (!argument_read("from", g->values[FROM], row_value, &from) || !argument_read("to", g->values[TO], row_value, &to) ||
        !argument_read("step", g->values[STEP], row_step, &step))
        return false;
    unit_dimension of_step = from.dimension == DIM_TEMPERATURE ? DIM_DIFFERENCE : from.dimension;
    if (to.dimension != from.dimension || step.dimension != of_step)
        return complain("--from, --to and --step must all be of salts by mass, of strength, or of boiling points");
    *t = (solution_table){from.dimension, from.si, to.si, step.si};
    if (!(t->to > t->from && t->step > 0 && (t->to - t->from) / t->step < (double)LOOK_UP_ROWS_MOST))
        return complain("--table must rise from --from to --to by a --step that makes at most 1000 rows");
    return true;
}

/* Writing --------------------------------------------------------------------------------------------------------- */

static bool draw(const plot *to, const char *units, const boil_plant *p, const solution_answer *rows, size_t count)
{
    picture_drawn drawn;
    picture_problem problem;
    unit_system s = UNITS_US;
    if (units != NULL)
        unit_system_named(units, &s);
    if (!solution_picture(p, rows, count, s, to->format, &drawn, &problem))
        return plot_failed(to, &problem);
    return plot_save(to, &drawn);
}

static bool csv_write(const char *path, const solution_answer *rows, size_t count)
{
    whole_file f;
    if (!whole_file_open(&f, path))
        return false;
    solution_csv(rows, count, f.to);
    return whole_file_close(&f);
}

static void text_write(const boil_plant *p, const solution_answer *rows, size_t count, bool table)
{
    if (table)
        solution_table_report(p, rows, count, stdout);
    else
        solution_report(p, rows, stdout);
}

static int write_all(const given *g, const boil_plant *p, const solution_answer *rows, size_t count)
{
    outputs o = {.json = g->values[JSON] != NULL, .csv = g->values[CSV]};
    bool table = g->values[TABLE] != NULL;
    if (!plot_read(g->values[PLOT], &o.plot) || !outputs_agree(&o))
        return STATUS_USAGE;
    bool written = o.csv == NULL || csv_write(o.csv, rows, count);
    written = (o.plot.path == NULL || draw(&o.plot, g->values[UNITS], p, rows, count)) && written;
    if (o.json && table)
        solution_table_json(rows, count, stdout);
    else if (o.json)
        solution_json(rows, stdout);
    else if (outputs_leave_report(&o))
        text_write(p, rows, count, table);
    return written ? STATUS_DONE : STATUS_STOPPED;
}

/* The rules for blend, temperature and factor are the plant's; a tank of a cubic metre stands in for the rest. */
static void stand_in(boil_tank *t)
{
    t->length_m = t->width_m = t->depth_m = 1;
    t->level_m = 0.5;
}

static int answer_table(const given *g, const boil_plant *p, const solution_table *t)
{
    size_t count;
    solution_answer *rows = solution_rows(p, t, &count);
    if (rows == NULL)
        return STATUS_USAGE;
    int status = write_all(g, p, rows, count);
    free(rows);
    return status;
}

static int answer(const given *g, scenario *s)
{
    solution_answer a;
    solution_table t;
    stand_in(&s->plant.tank);
    if (s->settings == NULL) {
        program_complain("out of memory");
        return STATUS_STOPPED;
    }
    if (!settings_read(g, s) || (g->values[TABLE] != NULL && !table_read(g, &t)))
        return STATUS_USAGE;
    const char *problem = boil_plant_problem(&s->plant);
    if (problem != NULL)
        program_complain("%s", problem);
    if (problem != NULL)
        return STATUS_USAGE;
    if (g->values[TABLE] != NULL)
        return answer_table(g, &s->plant, &t);
    return look_up(&s->plant, &a) ? write_all(g, &s->plant, &a, 1) : STATUS_USAGE;
}

static int run(const given *g)
{
    if (!given_together(g))
        return STATUS_USAGE;
    scenario s = {.plant = boil_plant_default(), .altitude_m = (double)NAN};
    s.settings = calloc(key_count(), sizeof *s.settings);
    int status = answer(g, &s);
    scenario_free(&s);
    return status;
}

const command command_solution = {
    .name = "solution",
    .summary = "look-up: boiling point, strength, density, heats, or a table of them",
    .description = "Properties of a bath of the given salts, at its boiling point or below it, at sea level or higher up. It "
                   "needs the salts and one of salt fraction, strength and boiling point, or a table over one of these.",
    .example =
        PROGRAM_NAME " solution --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2' --boiling-point '285 degF' --altitude '900 ft'",
    .options = options,
    .options_count = OPTIONS,
    .documents = solution_documents,
    .run = run,
};
