#include "commands/fit/answer.h"
#include "describe/report.h"

/* One of the numbers fitted. */
typedef struct {
    const char *name;
    double guess, left;
    boil_least_squares_estimate found;
    const double *correlation;
    size_t count;
} estimate;

static void correlation(json *j, const char *name, const void *record)
{
    const estimate *e = record;
    json_list(j, name);
    for (size_t k = 0; k < e->count; k++)
        json_number(j, NULL, e->correlation[k]);
    json_close(j);
}

/* clang-format off */
#define RECORD estimate
static const field estimate_fields[] = {
    TEXT("name", name, "the setting, or the law's number"), SAME(guess, "the scenario's own, in SI"),
    NUMBER("value", found.value, "the best, in SI"), NUMBER("standard_error", found.error, "of that, in SI"),
    NUMBER("low", found.low, "low end of its 95 % interval"),
    NUMBER("high", found.high, "high end of its 95 % interval"),
    SAME(left, "width of that interval over that of what was known before; null: nothing was"),
    BOOL("at_bound", found.at_bound, "it lies at an end of its range"),
    GIVEN(FIELD_NUMBERS, "correlation", NULL, correlation, "with each of the numbers fitted, in their order"),
    FIELDS_END};
#undef RECORD
/* clang-format on */

static void fitted(json *j, const char *name, const void *record)
{
    const fit_answer *f = record;
    size_t n = f->problem.parameters;
    json_list(j, name);
    for (size_t i = 0; i < n; i++) {
        estimate e = {fit_thing(f, i)->words, f->problem.start[i], fit_left(f, i), f->fit.of[i], f->fit.correlation[i], n};
        json_record(j, NULL, estimate_fields, &e);
    }
    json_close(j);
}

/* clang-format off */
#define RECORD fit_answer
#define MISSES(i) { \
    NUMBER("rms_guess", guess[i].rms, "root mean square of model less measured, before; null: no readings"), \
    NUMBER("rms", best[i].rms, "the same as fitted"), \
    NUMBER("largest", best[i].largest, "largest as fitted"), \
    NUMBER("largest_time_s", best[i].largest_s, "when"), \
    FIELDS_END}
static const field temperature[] = MISSES(0);
static const field level[] = MISSES(1);

static const field answer[] = {
    VERSION_FIELD, SCENARIO_FIELD, TEXT("log", log_path, "the file of readings"),
    COUNT("temperatures", temperatures, "readings of temperature used"),
    COUNT("levels", levels, "readings of level used"),
    COUNT("left_out", left_out, "readings before the start or after the end of the scenario"),
    BOOL("converged", fit.converged, "a best fit was found"),
    NUMBER("serial_correlation", fit.serial, "of neighbouring residuals"),
    NUMBER("independent_readings", fit.effective, "readings that are worth so many independent ones"),
    COUNT("runs", fit.trials, "runs it took"),
    GIVEN(FIELD_LIST, "fitted", estimate_fields, fitted, "the numbers fitted"),
    GROUP("temperature_K", temperature, "how temperatures agree, in K"),
    GROUP("still_level_m", level, "how levels agree, in m"), FIELDS_END};
#undef RECORD

TELLS(double, residual, fit_reading, r->best - r->measured)

#define RECORD fit_reading
static const field line_fields[] = {
    SAME(time_s, "when it was read"), TEXT("reading", name, "temperature_K or still_level_m"),
    SAME(measured, "as read, in SI"), SAME(guess, "of the run before"), NUMBER("fitted", best, "of the run as fitted"),
    WORKED_OUT("residual", residual, "fitted less measured"), FIELDS_END};

const document fit_documents[] = {
    {"--json", "the numbers fitted", answer, false}, {"--csv", "the readings, one a line", line_fields, true}, {0}};
/* clang-format on */

void fit_csv(const void *answer_of, FILE *to)
{
    const fit_answer *f = answer_of;
    csv_document(to, line_fields, f->readings, f->readings_count, sizeof *f->readings);
}
