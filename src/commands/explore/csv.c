#include "commands/explore/answer.h"

#include <stdlib.h>

#include "base/memory.h"

static void write_input(const char *kind, const explore_input *i, FILE *to)
{
    const boil_spread *s = &i->spread;
    fprintf(to, "%s = %s\nsaid = %s\nis = %d %d %.17g %.17g %.17g %.17g %zu\n", kind, i->words, i->as_written,
            (int)i->dimension, (int)s->kind, s->low, s->high, s->likely, s->deviation, s->count);
    for (size_t k = 0; k < s->count; k++)
        fprintf(to, "value = %.17g\n", s->value[k]);
}

char *explore_csv_plan(const explore_answer *s)
{
    char *text = NULL;
    size_t size = 0;
    FILE *to = memory_stream(&text, &size);
    if (to == NULL)
        return NULL;
    fprintf(to, "version = %s\ntitle = %s\nscenario = %s\n", BOIL_VERSION_TEXT, s->title, s->path);
    fprintf(to, "start_s = %.17g\nlimit_s = %.17g\nfreeboard_limit_m = %.17g\n", s->start_s, s->limit_s, s->freeboard_limit_m);
    fprintf(to, "plan = %zu %zu %lu\n", s->plan.points, s->plan.replicates, (unsigned long)s->plan.seed);
    if (s->grid.count > 0) {
        write_input("grid", &s->grid.input, to);
        fprintf(to, "steps = %zu\n", s->grid.count);
    }
    for (size_t i = 0; i < s->input_count; i++)
        write_input("input", &s->inputs[i], to);
    for (size_t i = 0; i < s->load_count; i++)
        fprintf(to, "load = %.17g %s\n", s->loads[i].time_s, s->loads[i].words);
    return memory_stream_close(to, &text) ? text : NULL;
}

/* Lines of the plan in one cell: "; " between them, a semicolon or backslash of their own behind a backslash. */
static char *in_one_line(const char *lines)
{
    char *text = NULL;
    size_t size = 0;
    FILE *to = lines != NULL ? memory_stream(&text, &size) : NULL;
    if (to == NULL)
        return NULL;
    for (const char *at = lines; *at != '\0'; at++)
        if (*at == '\n')
            fputs(at[1] != '\0' ? "; " : "", to);
        else
            fprintf(to, "%s%c", *at == ';' || *at == '\\' ? "\\" : "", *at);
    return memory_stream_close(to, &text) ? text : NULL;
}

void explore_csv_names(const explore_answer *s, FILE *to)
{
    csv_text(to, false, "row");
    if (s->grid.count > 0)
        csv_text(to, true, s->grid.input.words);
    for (size_t i = 0; i < s->input_count; i++)
        csv_text(to, true, s->inputs[i].words);
    for (size_t i = 0; i < s->outputs; i++)
        csv_text(to, true, explore_output_name(s, i).text);
    fputs(",study\n", to);
}

/* Without the end of its line. */
static void write_row(const explore_answer *s, size_t row, FILE *to)
{
    double value[BOIL_SAMPLING_INPUTS + 1];
    size_t count = explore_values(s, row, value);
    const double *out = explore_row(s, row);
    fprintf(to, "%zu", row);
    for (size_t i = 0; i < count; i++)
        csv_number(to, true, 17, value[i]);
    for (size_t i = 0; i < s->outputs; i++)
        csv_number(to, true, 17, out[i]);
}

void explore_csv_write(const void *answer, FILE *to)
{
    const explore_answer *s = answer;
    char *lines = explore_csv_plan(s), *plan = in_one_line(lines);
    bool begun = false;
    explore_csv_names(s, to);
    for (size_t row = 0; row < explore_rows(s); row++) {
        if (!explore_made(s, row))
            continue;
        write_row(s, row, to);
        csv_text(to, true, begun ? NULL : plan);
        fputc('\n', to);
        begun = true;
    }
    /* A share may be empty: it is of the study all the same. */
    for (size_t cells = s->outputs + s->input_count + (s->grid.count > 0); !begun && cells > 0; cells--)
        fputc(',', to);
    if (!begun) {
        csv_text(to, true, plan);
        fputc('\n', to);
    }
    free(plan);
    free(lines);
}

/* What its columns are, for the manual: inputs and loads are the scenario's. */
/* clang-format off */
#define COLUMN(name, says) {.kind = FIELD_NUMBER, .key = name, .meaning = says}
const field explore_csv_fields[] = {
    {.kind = FIELD_COUNT, .key = "row", .meaning = "number of the row in the whole study"},
    COLUMN("INPUT", "the number stepped over by --grid, then one column each of what varies, under its own name, in SI"),
    COLUMN("done", "1: the run reached its end, or the tank was full; 0: it left what is known of the bath, or there was no such bath"),
    COLUMN("slowest_recovery_s", "slowest recovery of a load; empty: one never recovered"),
    COLUMN("loads_back_share", "share of the loads back within the limit"), COLUMN("quiet_s", "time without boil"),
    COLUMN("freeboard_min_m", "least freeboard"), COLUMN("level_max_m", "highest level, swelled"),
    COLUMN("steam_peak_kg_s", "most steam"), COLUMN("layer_max_kg", "most water afloat"),
    COLUMN("temperature_max_K", "highest temperature while boiling"),
    COLUMN("temperature_end_K", "temperature at the end"), COLUMN("vented_total_kg", "vapour given off"),
    COLUMN("finding_ID", "one column a finding: 0: not found; 1 NOTICE, 2 CAUTION, 3 WARNING, 4 DANGER"),
    COLUMN("loadN_recovery_s", "of each load, N counting from 1: its recovery; empty: never"),
    COLUMN("loadN_lowest_K", "lowest temperature of the bath then"),
    COLUMN("loadN_level_m", "highest level from this load to the next, or the end"),
    {.kind = FIELD_TEXT, .key = "study", .meaning = "in the first row: what study it is, for --merge; keep that row first"},
    FIELDS_END};
/* clang-format on */
