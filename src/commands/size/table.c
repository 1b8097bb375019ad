#include "commands/size/output.h"

#include <math.h>

#include "analysis/heater_size.h"
#include "base/boil.h"
#include "base/json.h"
#include "base/program.h"
#include "base/text.h"
#include "describe/report.h"

enum { LOADS = 3, THICKNESSES = 5 };

static const double times[LOADS] = {0.5, 1, 2};
static const double inches[THICKNESSES] = {0.125, 0.25, 0.5, 0.75, 1};

typedef struct {
    double mass_kg[LOADS];
    double heat_W[LOADS][THICKNESSES]; /* NaN: none does */
} table;

static int cell(const scenario *s, double limit_s, const boil_load *l, double *heat_W)
{
    size_case c;
    boil_run_options o = boil_run_options_default();
    int result = size_case_one(s, limit_s, l, &c);
    if (result == BOIL_OK)
        result = boil_heater_size_for_recovery(&s->plant, &c.schedule, &o, limit_s, 0.002, heat_W);
    size_case_free(&c);
    if (result != BOIL_NO_ROOT && result != BOIL_RANGE)
        return result;
    *heat_W = (double)NAN;
    return BOIL_OK;
}

static int fill(const scenario *s, double limit_s, const quantity *heaviness, table *t)
{
    for (int i = 0; i < LOADS; i++)
        for (int k = 0; k < THICKNESSES; k++) {
            boil_load l = size_case_plate(s, heaviness, unit_to_si(DIM_LENGTH, "in", inches[k]));
            l.mass_kg = t->mass_kg[i] = times[i] * l.mass_kg;
            int result = cell(s, limit_s, &l, &t->heat_W[i][k]);
            if (result != BOIL_OK)
                return result;
        }
    return BOIL_OK;
}

static void as_text(const scenario *s, double limit_s, const table *t, unit_system system, FILE *to)
{
    fprintf(to, "Heat to the tank, %s, that brings the boil back within %s after one load of plate at %s\n",
            format_unit(system, DIM_POWER), format_duration(limit_s).text,
            format_quantity(system, DIM_TEMPERATURE, BOIL_ZERO_CELSIUS + 20).text);
    fprintf(to, "\n%s\n\n %-14s", text_plain(s->title).text, "load");
    for (int k = 0; k < THICKNESSES; k++)
        fprintf(to, " %10s", format_exact(system, DIM_LENGTH, unit_to_si(DIM_LENGTH, "in", inches[k])).text);
    for (int i = 0; i < LOADS; i++) {
        fprintf(to, "\n %-14s", format_quantity(system, DIM_MASS, t->mass_kg[i]).text);
        for (int k = 0; k < THICKNESSES; k++)
            fprintf(to, " %10s", size_number_up(system, DIM_POWER, t->heat_W[i][k]).text);
    }
    fputs("\n\n", to);
    report_paragraph(to, "The rim is not looked at here; 'size' without --table does. A dash: no heat does.");
    report_caution(to);
}

static void as_list(const table *t, double limit_s, FILE *to)
{
    json j = json_to(to);
    json_object(&j, NULL);
    json_text(&j, "version", PROGRAM_VERSION);
    json_number(&j, "limit_s", limit_s);
    json_list(&j, "table");
    for (int i = 0; i < LOADS; i++)
        for (int k = 0; k < THICKNESSES; k++) {
            json_object(&j, NULL);
            json_number(&j, "load_kg", t->mass_kg[i]);
            json_number(&j, "plate_m", unit_to_si(DIM_LENGTH, "in", inches[k]));
            json_number(&j, "heat_W", t->heat_W[i][k]);
            json_close(&j);
        }
    json_close(&j);
    json_close(&j);
}

int size_table(const scenario *s, double limit_s, const quantity *heaviness, unit_system system, bool as_json, FILE *to)
{
    table t;
    int result = fill(s, limit_s, heaviness, &t);
    if (result != BOIL_OK)
        return result;
    if (as_json)
        as_list(&t, limit_s, to);
    else
        as_text(s, limit_s, &t, system, to);
    return BOIL_OK;
}
