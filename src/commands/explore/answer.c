#include "commands/explore/answer.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/memory.h"
#include "base/program.h"
#include "statistics/sampling.h"

static size_t findings_known(void)
{
    const char *title;
    size_t n = 0;
    while (boil_finding_listed(n, &title) != NULL)
        n++;
    return n;
}

static boil_outcome begin(explore_answer *s)
{
    boil_sampling_plan plan = s->plan;
    boil_outcome outcome = BOIL_OK;
    s->findings = findings_known();
    s->outputs = EXPLORE_FIXED + s->findings + EXPLORE_LOAD_OUTPUTS * s->load_count;
    if (s->input_count > 0)
        outcome = boil_sampling_init(&s->design, &plan);
    if (outcome != BOIL_OK)
        return outcome;
    size_t count = explore_rows(s) * s->outputs;
    if (count == 0 || count > EXPLORE_VALUES_MAX)
        return BOIL_OUT_OF_RANGE;
    s->values = malloc(count * sizeof *s->values);
    for (size_t i = 0; s->values != NULL && i < count; i++)
        s->values[i] = (double)NAN;
    return s->values != NULL ? BOIL_OK : BOIL_NO_MEMORY;
}

bool explore_begun(explore_answer *s)
{
    boil_outcome outcome = begin(s);
    if (outcome == BOIL_OUT_OF_RANGE)
        return program_complain("a study of %zu rows is too large: fewer samples do", explore_rows(s));
    return memory_good(outcome);
}

void explore_free(explore_answer *s)
{
    free(s->values);
    s->values = NULL;
}

size_t explore_cells(const explore_answer *s)
{
    return s->grid.count > 0 ? s->grid.count : 1;
}

size_t explore_cell_rows(const explore_answer *s)
{
    return s->input_count > 0 ? boil_sampling_rows(&s->design) : 1;
}

size_t explore_rows(const explore_answer *s)
{
    return explore_cells(s) * explore_cell_rows(s);
}

bool explore_is_draw(const explore_answer *s, size_t row)
{
    return s->input_count == 0 || boil_sampling_is_draw(&s->design, row % explore_cell_rows(s));
}

bool explore_needs(const explore_answer *s, size_t row)
{
    return s->grid.count == 0 || explore_is_draw(s, row);
}

bool explore_made(const explore_answer *s, size_t row)
{
    return !isnan(explore_row(s, row)[EXPLORE_DONE]);
}

size_t explore_count(const explore_answer *s, bool made)
{
    size_t n = 0;
    for (size_t row = 0; row < explore_rows(s); row++)
        n += explore_needs(s, row) && (!made || explore_made(s, row));
    return n;
}

bool explore_varies_mixing(const explore_answer *s)
{
    static const char *const words = "mixing time factor";
    bool varies = s->grid.count > 0 && strcmp(s->grid.input.words, words) == 0;
    for (size_t i = 0; i < s->input_count; i++)
        varies = varies || strcmp(s->inputs[i].words, words) == 0;
    return varies;
}

double explore_grid_value(const explore_answer *s, size_t cell)
{
    const boil_spread *ends = &s->grid.input.spread;
    double share = s->grid.count > 1 ? (double)cell / (double)(s->grid.count - 1) : 0;
    return ends->low + share * (ends->high - ends->low);
}

size_t explore_values(const explore_answer *s, size_t row, double value[BOIL_SAMPLING_INPUTS + 1])
{
    double u[BOIL_SAMPLING_INPUTS];
    size_t n = 0;
    if (s->grid.count > 0)
        value[n++] = explore_grid_value(s, row / explore_cell_rows(s));
    if (s->input_count > 0)
        boil_sampling_row(&s->design, row % explore_cell_rows(s), u);
    for (size_t i = 0; i < s->input_count; i++)
        value[n++] = boil_spread_at(&s->inputs[i].spread, u[i]);
    return n;
}

double *explore_row(const explore_answer *s, size_t row)
{
    return s->values + row * s->outputs;
}

size_t explore_finding_output(size_t finding)
{
    return EXPLORE_FIXED + finding;
}

size_t explore_load_output_of(const explore_answer *s, size_t load, explore_load_output o)
{
    return EXPLORE_FIXED + s->findings + EXPLORE_LOAD_OUTPUTS * load + (size_t)o;
}

explore_name explore_output_name(const explore_answer *s, size_t column)
{
    static const char *const of_load[EXPLORE_LOAD_OUTPUTS] = {"recovery_s", "lowest_K", "level_m"};
    explore_name n;
    const char *title;
    size_t after = EXPLORE_FIXED + s->findings;
    if (column < EXPLORE_FIXED)
        snprintf(n.text, sizeof n.text, "%s", explore_csv_fields[EXPLORE_CSV_FIXED + column].key);
    else if (column < after)
        snprintf(n.text, sizeof n.text, "finding_%.36s", boil_finding_listed(column - EXPLORE_FIXED, &title));
    else
        snprintf(n.text, sizeof n.text, "load%zu_%s", (column - after) / EXPLORE_LOAD_OUTPUTS + 1,
                 of_load[(column - after) % EXPLORE_LOAD_OUTPUTS]);
    return n;
}

boil_sampling_results explore_results(const explore_answer *s, size_t cell)
{
    return (boil_sampling_results){&s->design, explore_row(s, cell * explore_cell_rows(s)), s->outputs};
}

const char *explore_grid_unit(const explore_answer *s, unit_system system)
{
    const explore_input *i = &s->grid.input;
    return i->dimension < DIM_COUNT ? format_unit_for(system, i->dimension, i->spread.high) : "";
}

double explore_grid_shown(const explore_answer *s, unit_system system, size_t cell)
{
    unit_dimension d = s->grid.input.dimension;
    double si = explore_grid_value(s, cell);
    return d < DIM_COUNT ? unit_from_si(d, explore_grid_unit(s, system), si) : si;
}

formatted_text explore_grid_words(const explore_answer *s, unit_system system, size_t cell)
{
    formatted_text t;
    const char *spelling = explore_grid_unit(s, system);
    snprintf(t.text, sizeof t.text, "%.5g%s%.12s", explore_grid_shown(s, system, cell), spelling[0] != '\0' ? " " : "",
             spelling);
    return t;
}
