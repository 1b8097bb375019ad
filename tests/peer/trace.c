/* trace.c -- one run of a scenario, as far as two integrators are compared by it: trace SCENARIO TOLERANCE [plain]. Rows every 61 s,
   beginnings and ends of quiet spells; then what it took. */
#include <gsl/gsl_errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>

#include "boilback.h"
#include "scenario/scenario.h"

static double user_s(void)
{
    struct rusage used;
    getrusage(RUSAGE_SELF, &used);
    return (double)used.ru_utime.tv_sec + 1e-6 * (double)used.ru_utime.tv_usec;
}

static void print(const boil_history *h, double took_s)
{
    for (size_t i = 0; i < h->rows_count; i++)
        printf("row %.3f %.10f %.10f\n", h->rows[i].time_s, h->rows[i].temperature_K, h->rows[i].level_m);
    for (size_t i = 0; i < h->quiet_count; i++)
        printf("quiet %zu %.9f %.9f\n", i, h->quiet[i].start_s, h->quiet[i].end_s);
    printf("took %zu %zu %.3f %d\n", h->evaluations, h->steps, 1e3 * took_s, (int)h->end);
}

int main(int count, char **words)
{
    messages m;
    scenario c = {0};
    boil_history h;
    boil_run_options o = boil_run_options_default();
    gsl_set_error_handler_off();
    messages_init(&m);
    if (count < 3 || scenario_read(words[1], &c, &m) != BOIL_OK)
        return 2;
    o.tolerance = atof(words[2]);
    o.plain_steps = count > 3;
    o.row_interval_s = 61;
    double start = user_s();
    if (boil_run(&c.plant, &c.schedule, &o, &h) != BOIL_OK)
        return 1;
    print(&h, user_s() - start);
    boil_history_free(&h);
    scenario_free(&c);
    return 0;
}
