/* table_text.c -- the heat for many loads and plates, in words. */
#include <math.h>

#include "commands/size/answer.h"
#include "describe/report.h"

/* Of all cells that have a heat. */
static void table_ends(const size_cells *t, unit_system s, FILE *to)
{
    double low_K = HUGE_VAL, high_K = 0, low_m = HUGE_VAL, high_m = 0;
    for (size_t i = 0; i < t->count; i++) {
        const boil_holding *at = &t->cells[i].at;
        if (isnan(t->cells[i].heat_W))
            continue;
        low_K = fmin(low_K, at->end_K);
        high_K = fmax(high_K, at->end_K);
        low_m = fmin(low_m, at->end_level_m);
        high_m = fmax(high_m, at->end_level_m);
    }
    if (high_K > 0)
        report_paragraph(to, "Ends boiling at %s to %s with %s to %s in the tank, at rest.", SHOWN(s, TEMPERATURE, low_K),
                         SHOWN(s, TEMPERATURE, high_K), SHOWN(s, LENGTH, low_m), SHOWN(s, LENGTH, high_m));
}

void size_table_report(const void *answer, const output *o, FILE *to)
{
    const size_cells *t = answer;
    unit_system s = o->system;
    report_verdict(to, "Heat to the tank, %s, that brings the boil back within %s after one load of plate at %s",
                   format_unit(s, DIM_POWER), format_duration(t->limit_s).text, SHOWN(s, TEMPERATURE, t->parts_K));
    report_title(to, t->scenario->title);
    fprintf(to, "\n %-14s", "load");
    for (size_t k = 0; k < SIZE_CELL_PLATES; k++)
        fprintf(to, " %10s", format_exact(s, DIM_LENGTH, t->cells[k].plate_m).text);
    for (size_t i = 0; i < t->count; i++) {
        if (i % SIZE_CELL_PLATES == 0)
            fprintf(to, "\n %-14s", SHOWN(s, MASS, t->cells[i].load_kg));
        fprintf(to, " %9s%c", size_number_up(s, DIM_POWER, t->cells[i].heat_W).text,
                !isnan(t->cells[i].heat_W) && !t->cells[i].holds ? '*' : ' ');
    }
    fputs("\n\n", to);
    report_paragraph(
        to, "A star: with that heat it does not hold, as less freeboard is left than is asked for, or the bath leaves its "
            "band. A dash: no heat does.");
    table_ends(t, s, to);
    report_caution(to);
}
