#include "commands/explore/answer.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/boil.h"

static size_t findings_known(void)
{
    const char *title;
    size_t n = 0;
    while (boil_finding_listed(n, &title) != NULL)
        n++;
    return n;
}

int study_begin(study *s)
{
    boil_sample_plan plan = s->plan;
    int outcome = BOIL_OK;
    s->findings = findings_known();
    s->outputs = STUDY_FIXED + s->findings + STUDY_LOAD_OUTPUTS * s->load_count;
    if (s->input_count > 0)
        outcome = boil_sample_init(&s->design, &plan);
    if (outcome != BOIL_OK)
        return outcome;
    size_t count = study_rows(s) * s->outputs;
    s->values = count > 0 && count <= STUDY_VALUES_MAX ? malloc(count * sizeof *s->values) : NULL;
    for (size_t i = 0; s->values != NULL && i < count; i++)
        s->values[i] = (double)NAN;
    return s->values != NULL ? BOIL_OK : BOIL_NO_MEMORY;
}

void study_free(study *s)
{
    free(s->values);
    s->values = NULL;
}

size_t study_cells(const study *s)
{
    return s->grid.count > 0 ? s->grid.count : 1;
}

size_t study_cell_rows(const study *s)
{
    return s->input_count > 0 ? boil_sample_rows(&s->design) : 1;
}

size_t study_rows(const study *s)
{
    return study_cells(s) * study_cell_rows(s);
}

bool study_needs(const study *s, size_t row)
{
    size_t kind = s->input_count > 0 ? row % study_cell_rows(s) % (s->input_count + 2) : 0;
    return s->grid.count == 0 || kind < 2;
}

bool study_made(const study *s, size_t row)
{
    return !isnan(study_row(s, row)[STUDY_DONE]);
}

size_t study_count(const study *s, bool made)
{
    size_t n = 0;
    for (size_t row = 0; row < study_rows(s); row++)
        n += study_needs(s, row) && (!made || study_made(s, row));
    return n;
}

bool study_varies_mixing(const study *s)
{
    static const char *const words = "mixing time factor";
    bool varies = s->grid.count > 0 && strcmp(s->grid.input.words, words) == 0;
    for (size_t i = 0; i < s->input_count; i++)
        varies = varies || strcmp(s->inputs[i].words, words) == 0;
    return varies;
}

double study_grid_value(const study *s, size_t cell)
{
    const boil_spread *ends = &s->grid.input.spread;
    double share = s->grid.count > 1 ? (double)cell / (double)(s->grid.count - 1) : 0;
    return ends->low + share * (ends->high - ends->low);
}

size_t study_values(const study *s, size_t row, double value[BOIL_SAMPLE_INPUTS + 1])
{
    double u[BOIL_SAMPLE_INPUTS];
    size_t n = 0;
    if (s->grid.count > 0)
        value[n++] = study_grid_value(s, row / study_cell_rows(s));
    if (s->input_count > 0)
        boil_sample_row(&s->design, row % study_cell_rows(s), u);
    for (size_t i = 0; i < s->input_count; i++)
        value[n++] = boil_spread_at(&s->inputs[i].spread, u[i]);
    return n;
}

double *study_row(const study *s, size_t row)
{
    return s->values + row * s->outputs;
}

size_t study_finding_output(size_t finding)
{
    return STUDY_FIXED + finding;
}

size_t study_load_output_of(const study *s, size_t load, study_load_output o)
{
    return STUDY_FIXED + s->findings + STUDY_LOAD_OUTPUTS * load + (size_t)o;
}

static const char *fixed_name(size_t output)
{
    static const char *const names[STUDY_FIXED] = {
        [STUDY_DONE] = "done",
        [STUDY_SLOWEST_S] = "slowest_recovery_s",
        [STUDY_BACK_SHARE] = "loads_back_share",
        [STUDY_QUIET_S] = "quiet_s",
        [STUDY_FREEBOARD_M] = "freeboard_min_m",
        [STUDY_LEVEL_M] = "level_max_m",
        [STUDY_STEAM_KG_S] = "steam_peak_kg_s",
        [STUDY_LAYER_KG] = "layer_max_kg",
        [STUDY_TEMPERATURE_MAX_K] = "temperature_max_K",
        [STUDY_TEMPERATURE_END_K] = "temperature_end_K",
        [STUDY_VENTED_KG] = "vented_total_kg",
    };
    return names[output];
}

study_name study_output_name(const study *s, size_t output)
{
    static const char *const of_load[STUDY_LOAD_OUTPUTS] = {"recovery_s", "lowest_K", "level_m"};
    study_name n;
    const char *title;
    size_t after = STUDY_FIXED + s->findings;
    if (output < STUDY_FIXED)
        snprintf(n.text, sizeof n.text, "%s", fixed_name(output));
    else if (output < after)
        snprintf(n.text, sizeof n.text, "finding_%.36s", boil_finding_listed(output - STUDY_FIXED, &title));
    else
        snprintf(n.text, sizeof n.text, "load%zu_%s", (output - after) / STUDY_LOAD_OUTPUTS + 1,
                 of_load[(output - after) % STUDY_LOAD_OUTPUTS]);
    return n;
}

boil_sample_results study_results(const study *s, size_t cell)
{
    return (boil_sample_results){&s->design, study_row(s, cell * study_cell_rows(s)), s->outputs};
}
