#include "actions/action_table.h"
#include "base/program.h"
#include "base/text.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "describe/listing.h"
#include "describe/report.h"

static size_t actions_of(const scenario *s, const action_type *type)
{
    size_t n = 0;
    for (size_t i = 0; i < s->schedule.count; i++)
        n += action_type_of(s->schedule.actions[i].kind) == type;
    return n;
}

/* ", 2 of salts", where there are any. */
static void others(const scenario *s)
{
    const action_type *type;
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++) {
        size_t n = actions_of(s, type);
        if (type->group == ACTION_ADDITION && type != &action_water && n > 0)
            printf(", %zu of %s", n, type->keyword);
    }
}

static void answer(const scenario *s)
{
    printf("%s: no mistakes found; %s and %s of water", text_plain(s->path).text,
           format_count(actions_of(s, &action_load), "load", "loads").text,
           format_count(actions_of(s, &action_water), "addition", "additions").text);
    others(s);
    printf(" in %s from %s\n\n", format_duration(s->schedule.duration_s).text, format_clock(s->start_s, 0).text);
    listing_print(s, stdout);
    putchar('\n');
    report_uncertainty(&s->plant.charge, UNITS_SI, stdout);
    report_caution(stdout);
}

static int run(const given *g)
{
    scenario s;
    bool good = command_scenario_read(g->argument, &s);
    if (good)
        answer(&s);
    scenario_free(&s);
    return good ? STATUS_DONE : STATUS_USAGE;
}

const command command_check = {
    .name = "check",
    .argument = "FILE",
    .summary = "is the scenario right, and what does it mean",
    .description =
        "Reads a scenario and says everything that is wrong with it, or what it comes to: every setting in US and SI "
        "units, defaults marked, the charge worked out, the acts one by one. FILE '-' is standard input.",
    .example = PROGRAM_NAME " check night.bath",
    .run = run,
};
