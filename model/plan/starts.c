#include "plan/starts.h"

#include <math.h>

enum { LAST_DIPS = 6 }; /* that are asked to take a part: judgement */

typedef struct {
    double first, second;
} rank;

static rank rank_of(const boil_plan_case *c, boil_plan_rule rule, size_t part)
{
    const boil_plan_job *j = boil_plan_job_of(c, part);
    double longest = -(c->parts[part].hot_s + j->least_s);
    switch (rule) {
    case BOIL_PLAN_BY_DUE:
        return (rank){j->due_s, longest};
    case BOIL_PLAN_BY_LONGEST:
        return (rank){longest, j->due_s};
    case BOIL_PLAN_BY_HEAVIEST:
        return (rank){-c->parts[part].heat_J, j->due_s};
    case BOIL_PLAN_BY_EARLIEST_AND_DUE:
        return (rank){j->earliest_s, j->due_s};
    case BOIL_PLAN_BY_EARLIEST_AND_LONGEST:
        return (rank){j->earliest_s, longest};
    default:
        return (rank){0, 0};
    }
}

static bool before(rank a, rank b)
{
    return a.first < b.first || (a.first == b.first && a.second < b.second);
}

/* Those that rank the same stay as they are in the list. */
static void sort(const boil_plan_case *c, boil_plan_rule rule, size_t parts[])
{
    for (size_t i = 0; i < c->parts_count; i++) {
        rank r = rank_of(c, rule, i);
        size_t at = i;
        for (; at > 0 && before(r, rank_of(c, rule, parts[at - 1])); at--)
            parts[at] = parts[at - 1];
        parts[at] = i;
    }
}

/* Stays differ by no more than five minutes: judgement. */
static bool alike(const boil_plan_case *c, size_t a, size_t b)
{
    const double minutes_s = 300;
    double stay_a = c->parts[a].hot_s + boil_plan_job_of(c, a)->least_s,
           stay_b = c->parts[b].hot_s + boil_plan_job_of(c, b)->least_s;
    return fabs(stay_a - stay_b) <= minutes_s;
}

static void pack(const boil_plan_case *c, boil_plan_order *o)
{
    for (size_t k = 1; k < o->dips_count; k++) {
        size_t part = o->parts[o->first[k]], oldest = k > LAST_DIPS ? k - LAST_DIPS : 0;
        for (size_t i = oldest; i < k; i++) {
            const size_t *in = o->parts + o->first[i];
            if (!boil_plan_may_share(c, in, boil_plan_order_size(o, i), part) || !alike(c, in[0], part))
                continue;
            boil_plan_order_join(o, k, 0, i);
            k--;
            break;
        }
    }
}

void boil_plan_start(const boil_plan_case *c, boil_plan_rule rule, bool packed, boil_plan_order *o)
{
    sort(c, rule, o->parts);
    o->dips_count = c->parts_count;
    for (size_t i = 0; i <= c->parts_count; i++)
        o->first[i] = i;
    if (packed)
        pack(c, o);
}
