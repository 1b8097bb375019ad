#include "commands/solution/answer.h"

/* clang-format off */
TELLS(double, baume, solution_answer, solution_baume(r->gravity_60F))
TELLS(double, twaddell, solution_answer, solution_twaddell(r->gravity_60F))
TELLS(double, water_per_salts, solution_answer, (1 - r->salt_fraction) / r->salt_fraction)

#define RECORD solution_answer
static const field answer[] = {
    SAME(salt_fraction, "salts by mass"), SAME(strength_kg_m3, "salts per volume at the boil"),
    SAME(boiling_point_K, "where it boils"), SAME(temperature_K, "that asked for; else the boiling point"),
    SAME(density_kg_m3, "at that temperature"),
    NUMBER("enthalpy_J_kg", heat.enthalpy_J, "at that temperature; liquid water at 0 degC is zero"),
    NUMBER("heat_capacity_J_kgK", heat.heat_capacity_J_K, "at that temperature"),
    SAME(water_activity, "at that temperature"),
    NUMBER("water_partial_enthalpy_J_kg", heat.water, "of the water in it, at that temperature"),
    NUMBER("boiling_point_slope_K", slope_K, "rise of the boiling point with the salt fraction"),
    NUMBER("density_at_boil_kg_m3", hot_kg_m3, "at the boil"),
    NUMBER("density_at_20_degC_kg_m3", cold_kg_m3, "at 20 degC, crystallised or not"),
    WORKED_OUT("baume_heavy_60_degF", baume, "hydrometer, heavy degrees at 60 degF"),
    WORKED_OUT("twaddell_60_degF", twaddell, "hydrometer, degrees at 60 degF"),
    NUMBER("heat_of_dilution_J_kg", dilution_J_kg, "heat set free per mass of water put into much of it"),
    WORKED_OUT("water_per_salts", water_per_salts, "mass of water over mass of salts"),
    SAME(crystals_from_K, "it crystallises below; null or empty: not above 0 degC"), FIELDS_END};
#undef RECORD

#define RECORD solution_answers
static const field table[] = {LIST("table", rows, count, answer, "the rows"), FIELDS_END};

const document solution_documents[] = {
    {"--json", "one solution", answer, false},
    {"--json, with --table", "a table of them", table, false},
    {"--csv", "one solution or, with --table, a line each", answer, true},
    {0}};
/* clang-format on */

void solution_csv(const void *answers, FILE *to)
{
    const solution_answers *a = answers;
    csv_document(to, answer, a->rows, a->count, sizeof *a->rows);
}
