#include "commands/solution/answer.h"

#include <math.h>

#include "base/constants.h"
#include "describe/listing.h"
#include "describe/report.h"

static void blend_line(const boil_plant *p, FILE *to)
{
    const double *blend = p->charge.blend;
    fprintf(to, "%.4g %% NaOH, %.4g %% NaNO3, %.4g %% NaNO2 by mass\n\n", 100 * blend[BOIL_NAOH], 100 * blend[BOIL_NANO3],
            100 * blend[BOIL_NANO2]);
}

void solution_report(const void *answers, const output *o, FILE *to)
{
    (void)o;
    const boil_plant *p = ((const solution_answers *)answers)->plant;
    const solution_answer *a = answers; /* the only one */
    blend_line(p, to);
    listing_line(to, "pressure", DIM_PRESSURE, p->ambient.pressure_Pa, "");
    listing_line(to, "salts by mass", DIM_FRACTION, a->salt_fraction, "");
    listing_line(to, "strength", DIM_CONCENTRATION, a->strength_kg_m3, "salts per volume at the boil");
    listing_line(to, "boils at", DIM_TEMPERATURE, a->boiling_point_K, "");
    listing_line(to, "1 % more salts", DIM_DIFFERENCE, 0.01 * a->slope_K, "higher");
    listing_line(to, "density", DIM_CONCENTRATION, a->hot_kg_m3, "at the boil");
    listing_line(to, "", DIM_CONCENTRATION, a->cold_kg_m3, "at 20 degC");
    fprintf(to, " %-19s %.1f degrees Baume, %.1f degrees Twaddell\n", "hydrometer, 60 degF", solution_baume(a->gravity_60F),
            solution_twaddell(a->gravity_60F));
    if (!isnan(a->crystals_from_K))
        listing_line(to, "it crystallises", DIM_TEMPERATURE, a->crystals_from_K, "and below");
    fputs("\nat\n", to);
    listing_line(to, "temperature", DIM_TEMPERATURE, a->temperature_K,
                 a->temperature_K > a->boiling_point_K + 0.01 ? "above its boiling point" : "");
    listing_line(to, "density", DIM_CONCENTRATION, a->density_kg_m3, "");
    fprintf(to, " %-40s %.4g kJ/kgK\n", "heat capacity", 1e-3 * a->heat.heat_capacity_J_K);
    fprintf(to, " %-40s %.4g kJ/kg\n", "enthalpy, liquid water at 0 degC zero", 1e-3 * a->heat.enthalpy_J);
    fprintf(to, " %-40s %.4g kJ/kg\n", "partial enthalpy of the water in it", 1e-3 * a->heat.water);
    fprintf(to, " %-40s %.4g kJ/kg\n", "heat of dilution, per water put in", 1e-3 * a->dilution_J_kg);
    fprintf(to, " %-40s %.4g\n", "water activity", a->water_activity);
    fputc('\n', to);
    report_uncertainty(&p->charge, UNITS_SI, to);
    report_caution(to);
}

static void row(const solution_answer *a, FILE *to)
{
    bool crystallised = a->crystals_from_K > BOIL_ZERO_CELSIUS + 20; /* NaN: never */
    fprintf(to, " %5s %7s %6s %6s %6s %6s %6s %6s%c%5.1f %6.1f %8.1f\n",
            format_number(UNITS_US, DIM_FRACTION, a->salt_fraction).text,
            format_number(UNITS_US, DIM_CONCENTRATION, a->strength_kg_m3).text,
            format_number(UNITS_SI, DIM_CONCENTRATION, a->strength_kg_m3).text,
            format_number(UNITS_US, DIM_TEMPERATURE, a->boiling_point_K).text,
            format_number(UNITS_SI, DIM_TEMPERATURE, a->boiling_point_K).text,
            format_number(UNITS_SI, DIM_CONCENTRATION, a->hot_kg_m3).text,
            format_number(UNITS_SI, DIM_CONCENTRATION, a->cold_kg_m3).text,
            format_number(UNITS_US, DIM_CONCENTRATION, a->cold_kg_m3).text, crystallised ? '*' : ' ',
            solution_baume(a->gravity_60F), solution_twaddell(a->gravity_60F), 1e-3 * a->dilution_J_kg);
}

void solution_table_report(const void *answers, const output *o, FILE *to)
{
    (void)o;
    const solution_answers *a = answers;
    const boil_plant *p = a->plant;
    blend_line(p, to);
    listing_line(to, "pressure", DIM_PRESSURE, p->ambient.pressure_Pa, "");
    fprintf(to, "\n %5s %14s %13s %6s %13s %12s %8s\n", "salts", "strength", "boils at", "hot", "at 20 degC", "at 60 degF",
            "dilution");
    fprintf(to, " %5s %7s %6s %6s %6s %6s %6s %6s %5s %6s %8s\n", "%", "lb/gal", "kg/m3", "degF", "degC", "kg/m3", "kg/m3",
            "lb/gal", "Baume", "Twadd.", "kJ/kg");
    for (size_t i = 0; i < a->count; i++)
        row(&a->rows[i], to);
    fputc('\n', to);
    report_paragraph(to,
                     "Strength: salts per volume at the boil. Hot, and at 20 degC: density. Dilution: heat set free per kg of "
                     "water put in, at the boil or "
                     "the temperature given. *: holds crystals at 20 degC; looked up alone, it says up to what temperature.");
    boil_initial_charge as = p->charge;
    as.basis = BOIL_INITIAL_BY_SALT_FRACTION;
    as.value = a->rows[a->count - 1].salt_fraction;
    report_uncertainty(&as, UNITS_SI, to);
    report_caution(to);
}
