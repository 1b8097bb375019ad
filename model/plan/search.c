#include "plan/search.h"

#include "plan/decoder.h"
#include "plan/starts.h"
#include "statistics/stream.h"

/* All judgement, from trials: steps back that are compared, steps without gain before a shake, its changes, steps between two reports, and
   dips that are asked to take a part. */
enum { LATE = 30, STALE = 1200, SHAKE_LEAST = 2, SHAKE_MOST = 6, TOLD_EVERY = 500, FIT_TRIES = 8 };

size_t boil_plan_search_tries(size_t parts)
{
    const size_t few = 6000, each = 600, most = 40000;
    size_t tries = few + each * parts;
    return tries < most ? tries : most;
}

/* One chain. */
typedef struct {
    const boil_plan_case *of;
    boil_stream stream;
    boil_plan_decoder decoder;
    boil_plan_order now, trial, best;
    boil_plan_value now_value, best_value, late[LATE];
    size_t tried, since_best;
} chain;

static size_t any_dip(chain *c)
{
    return boil_stream_below(&c->stream, c->trial.dips_count);
}

/* A part of any dip into another that takes it; after a few vain tries it goes alone. */
static void move_part(chain *c)
{
    boil_plan_order *o = &c->trial;
    size_t dip = any_dip(c), part = boil_stream_below(&c->stream, boil_plan_order_size(o, dip));
    size_t moved = o->parts[o->first[dip] + part];
    for (int i = 0; i < FIT_TRIES; i++) {
        size_t into = any_dip(c);
        if (into == dip || !boil_plan_may_share(c->of, o->parts + o->first[into], boil_plan_order_size(o, into), moved))
            continue;
        boil_plan_order_join(o, dip, part, into);
        return;
    }
    boil_plan_order_part(o, dip, part, boil_stream_below(&c->stream, o->dips_count + 1));
}

/* Whether a part may take the place of another of its dip. */
static bool may_replace(const chain *c, size_t dip, size_t place, size_t by)
{
    const boil_plan_order *o = &c->trial;
    size_t others[BOIL_PLAN_PARTS_MAX], count = 0;
    for (size_t i = 0; i < boil_plan_order_size(o, dip); i++)
        if (i != place)
            others[count++] = o->parts[o->first[dip] + i];
    return boil_plan_may_share(c->of, others, count, by);
}

static void swap_parts(chain *c)
{
    boil_plan_order *o = &c->trial;
    size_t a = any_dip(c), b = any_dip(c);
    size_t i = boil_stream_below(&c->stream, boil_plan_order_size(o, a)),
           k = boil_stream_below(&c->stream, boil_plan_order_size(o, b));
    size_t *x = &o->parts[o->first[a] + i], *y = &o->parts[o->first[b] + k], kept = *x;
    if (a == b || !may_replace(c, a, i, *y) || !may_replace(c, b, k, *x))
        return;
    *x = *y;
    *y = kept;
}

static void take_out(chain *c)
{
    size_t dip = any_dip(c), part = boil_stream_below(&c->stream, boil_plan_order_size(&c->trial, dip));
    if (boil_plan_order_size(&c->trial, dip) > 1)
        boil_plan_order_part(&c->trial, dip, part, boil_stream_below(&c->stream, c->trial.dips_count + 1));
}

/* How often each: judgement, trials. */
static void change(chain *c)
{
    double which = boil_stream_share(&c->stream);
    size_t a = any_dip(c), b = any_dip(c);
    if (which < 0.35)
        boil_plan_order_move(&c->trial, a, b);
    else if (which < 0.60)
        boil_plan_order_swap(&c->trial, a, b);
    else if (which < 0.80)
        move_part(c);
    else if (which < 0.90)
        swap_parts(c);
    else
        take_out(c);
}

static boil_plan_value value_of(chain *c, const boil_plan_order *o)
{
    c->tried++;
    return boil_plan_decode(&c->decoder, o)->value;
}

/* The order in hand, if it is the best so far. */
static void note(chain *c, const boil_plan_order *o, const boil_plan_value *v)
{
    if (!boil_plan_better(v, &c->best_value))
        return;
    boil_plan_order_copy(o, &c->best);
    c->best_value = *v;
    c->since_best = 0;
}

static void go_on_from(chain *c, const boil_plan_order *o, const boil_plan_value *v)
{
    boil_plan_order_copy(o, &c->now);
    c->now_value = *v;
    for (int i = 0; i < LATE; i++)
        c->late[i] = *v;
    c->since_best = 0;
}

static void shake(chain *c)
{
    size_t changes = SHAKE_LEAST + boil_stream_below(&c->stream, SHAKE_MOST - SHAKE_LEAST + 1);
    boil_plan_order_copy(&c->best, &c->trial);
    while (changes-- > 0)
        change(c);
    boil_plan_value v = value_of(c, &c->trial);
    go_on_from(c, &c->trial, &v);
    note(c, &c->trial, &v);
}

static void step(chain *c)
{
    boil_plan_value *late = &c->late[c->tried % LATE];
    boil_plan_order_copy(&c->now, &c->trial);
    change(c);
    boil_plan_value v = value_of(c, &c->trial);
    c->since_best++;
    if (!boil_plan_better(&c->now_value, &v) || !boil_plan_better(late, &v)) {
        boil_plan_order kept = c->now;
        c->now = c->trial;
        c->trial = kept;
        c->now_value = v;
        note(c, &c->now, &v);
    }
    if (boil_plan_better(&c->now_value, late))
        *late = c->now_value;
}

static void try_starts(chain *c)
{
    for (int rule = 0; rule < BOIL_PLAN_RULES; rule++)
        for (int packed = 0; packed < 2; packed++) {
            boil_plan_start(c->of, (boil_plan_rule)rule, packed == 1, &c->trial);
            boil_plan_value v = value_of(c, &c->trial);
            note(c, &c->trial, &v);
        }
    go_on_from(c, &c->best, &c->best_value);
}

static bool tell(const boil_plan_search *s, const chain *c)
{
    return s->keep_going == NULL || s->keep_going(s->context, &c->best_value, c->tried);
}

static void run(chain *c, const boil_plan_search *s)
{
    try_starts(c);
    while (c->tried < s->tries && c->of->parts_count > 1 && (c->tried % TOLD_EVERY != 0 || tell(s, c)))
        if (c->since_best >= STALE)
            shake(c);
        else
            step(c);
    tell(s, c);
}

static void end(chain *c)
{
    boil_plan_decoder_free(&c->decoder);
    boil_plan_order_free(&c->now);
    boil_plan_order_free(&c->trial);
    boil_plan_order_free(&c->best);
}

boil_outcome boil_plan_search_run(const boil_plan_case *of, const boil_plan_search *s, boil_plan_order *order,
                                  boil_plan_value *value)
{
    chain c = {.of = of, .stream = boil_stream_begin(s->seed, s->chain)};
    if (boil_plan_decoder_begin(&c.decoder, of) != BOIL_OK || boil_plan_order_begin(&c.now, of->parts_count) != BOIL_OK ||
        boil_plan_order_begin(&c.trial, of->parts_count) != BOIL_OK ||
        boil_plan_order_begin(&c.best, of->parts_count) != BOIL_OK) {
        end(&c);
        return BOIL_NO_MEMORY;
    }
    boil_plan_order_copy(order, &c.best);
    c.best_value = value_of(&c, order);
    run(&c, s);
    boil_plan_order_copy(&c.best, order);
    *value = c.best_value;
    end(&c);
    return BOIL_OK;
}
