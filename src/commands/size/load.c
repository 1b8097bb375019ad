#include "commands/size/answer.h"

#include <math.h>

#include "analysis/load_size.h"

static bool is_no(int result)
{
    return result == BOIL_NO_ROOT || result == BOIL_OUT_OF_RANGE;
}

int size_heaviest_of(const size_case *c, size_heaviest *out)
{
    boil_run_options o = boil_run_options_default();
    *out = (size_heaviest){.size = c};
    int result = boil_load_size_heaviest(&c->scenario->plant, &c->schedule, &o, c->limit_s, &out->times);
    if (!is_no(result))
        return result;
    out->times = 0;
    return BOIL_OK;
}

static int prove(const boil_plant *watered, size_interval *i)
{
    boil_schedule s;
    boil_run_options o = boil_run_options_default();
    int result = boil_load_size_repeated(&i->size->load, i->interval_s, i->size->limit_s, &s);
    if (result == BOIL_OK)
        result = boil_run(watered, &s, &o, &i->proof);
    boil_schedule_free(&s);
    return result;
}

int size_interval_of(const size_case *c, size_interval *out)
{
    boil_run_options o = boil_run_options_default();
    boil_plant watered;
    *out = (size_interval){.size = c};
    int result = boil_load_size_watered(&c->scenario->plant, &watered);
    if (result == BOIL_OK)
        result = boil_load_size_interval(&watered, &c->load, &o, c->limit_s, &out->interval_s);
    if (result == BOIL_OK)
        return prove(&watered, out);
    out->interval_s = (double)NAN;
    return is_no(result) ? BOIL_OK : result;
}

void size_interval_free(size_interval *i)
{
    boil_history_free(&i->proof);
}
