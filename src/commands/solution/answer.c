#include "commands/solution/answer.h"

#include <math.h>
#include <stdlib.h>

#include "base/memory.h"
#include "base/program.h"

double solution_baume(double specific_gravity)
{
    return 145 - 145 / specific_gravity;
}

double solution_twaddell(double specific_gravity)
{
    return 200 * (specific_gravity - 1);
}

/* The end of a range is still in it; a rounding error beyond it too. */
bool look_up(const boil_plant *p, solution_answer *a)
{
    const boil_range *r = &a->range;
    if (!memory_good(boil_solution_facts_of(p, a)))
        return !memory_was_refused() &&
               program_complain("there is no boiling bath of these salts and this strength that the correlations cover");
    return r->margin > -1e-9 || program_complain("%s comes to %.4g %s, and what is known of it ends at %.4g %s", r->quantity,
                                                 r->value, r->unit, r->limit, r->unit);
}

solution_answer *solution_rows(const boil_plant *p, const solution_table *t, size_t *count)
{
    boil_plant row = *p;
    *count = (size_t)(floor((t->to - t->from) / t->step + 1e-9) + 1);
    solution_answer *rows = memory_needed(calloc(*count, sizeof *rows));
    if (rows == NULL)
        return NULL;
    row.charge.basis = t->over == DIM_FRACTION        ? BOIL_INITIAL_BY_SALT_FRACTION
                       : t->over == DIM_CONCENTRATION ? BOIL_INITIAL_BY_STRENGTH
                                                      : BOIL_INITIAL_BY_BOILING_POINT;
    for (size_t i = 0; i < *count; i++) {
        row.charge.value = t->from + (double)i * t->step;
        if (!look_up(&row, &rows[i])) {
            program_complain("--table: so at its row of %s (%s); let it begin or end before that",
                             format_exact(UNITS_US, t->over, row.charge.value).text,
                             format_exact(UNITS_SI, t->over, row.charge.value).text);
            free(rows);
            return NULL;
        }
    }
    return rows;
}
