#include <math.h>

#include "base/json.h"
#include "base/program.h"
#include "commands/fit/output.h"

static void estimate(json *j, const fit_answer *f, size_t i)
{
    const boil_least_squares_estimate *e = &f->fit.of[i];
    json_object(j, NULL);
    json_text(j, "name", fit_thing(f, i)->words);
    json_number(j, "guess", f->problem.start[i]);
    json_number(j, "value", e->value);
    json_number(j, "standard_error", e->error);
    json_number(j, "low", e->low);
    json_number(j, "high", e->high);
    json_number(j, "left", fit_left(f, i));
    json_bool(j, "at_bound", e->at_bound);
    json_list(j, "correlation");
    for (size_t k = 0; k < f->problem.parameters; k++)
        json_number(j, NULL, f->fit.correlation[i][k]);
    json_close(j);
    json_close(j);
}

static void misses(json *j, const char *name, const fit_misses *guess, const fit_misses *best)
{
    json_object(j, name);
    json_number(j, "rms_guess", guess->rms);
    json_number(j, "rms", best->rms);
    json_number(j, "largest", best->largest);
    json_number(j, "largest_time_s", best->largest_s);
    json_close(j);
}

void fit_json(const fit_answer *f, FILE *to)
{
    json j = json_to(to);
    json_object(&j, NULL);
    json_text(&j, "version", PROGRAM_VERSION);
    json_text(&j, "scenario", f->scenario->path);
    json_text(&j, "log", f->log_path);
    json_number(&j, "temperatures", (double)f->temperatures);
    json_number(&j, "levels", (double)f->levels);
    json_number(&j, "left_out", (double)f->left_out);
    json_bool(&j, "converged", f->fit.converged);
    json_number(&j, "serial_correlation", f->fit.serial);
    json_number(&j, "independent_readings", f->fit.effective);
    json_number(&j, "runs", (double)f->fit.trials);
    json_list(&j, "fitted");
    for (size_t i = 0; i < f->problem.parameters; i++)
        estimate(&j, f, i);
    json_close(&j);
    misses(&j, "temperature_K", &f->guess[0], &f->best[0]);
    misses(&j, "still_level_m", &f->guess[1], &f->best[1]);
    json_close(&j);
}
