/* grid.c -- the heat over two numbers of a scenario, such as a tank's proportions. */
#include "commands/size/grid.h"

#include <math.h>
#include <string.h>

#include "base/constants.h"

double size_grid_value(const uncertain_grid *g, size_t step)
{
    const boil_spread *ends = &g->over.spread;
    return ends->low + (ends->high - ends->low) * (double)step / (double)(g->steps - 1);
}

enum { CHANGES = 5 };

typedef struct {
    uncertain_thing things[CHANGES];
    scenario_change changes[CHANGES];
    size_t count;
} changed;

static void change(changed *c, const uncertain_thing *t, double si)
{
    c->things[c->count] = *t;
    c->changes[c->count] = (scenario_change){&c->things[c->count], si};
    c->count++;
}

static bool varies(const changed *c, const char *words, double *si)
{
    for (size_t i = 0; i < c->count; i++)
        if (strcmp(c->things[i].words, words) == 0) {
            *si = c->changes[i].si;
            return true;
        }
    return false;
}

static void follow(changed *c, const char *words, double si)
{
    uncertain_thing t = uncertain_setting(key_named("tank", words));
    change(c, &t, si);
}

/* The level follows, or what is across it where that is one of the two; and the rim stays as far above the level. */
static void keep_volume(const boil_tank *t, changed *c)
{
    double volume = boil_tank_area(t) * t->level_m, level = t->level_m, length = t->length_m, width = t->width_m,
           diameter = t->diameter_m, depth;
    bool by_level = varies(c, "tank level", &level), box = t->shape == BOIL_TANK_BOX;
    bool by_length = varies(c, "tank length", &length), by_width = varies(c, "tank width", &width);
    varies(c, "tank diameter", &diameter);
    if (!by_level) {
        level = volume / (box ? length * width : BOIL_PI / 4 * diameter * diameter);
        follow(c, "level", level);
    } else if (!box) {
        follow(c, "diameter", sqrt(4 * volume / (BOIL_PI * level)));
    } else if (!by_width) {
        follow(c, "width", volume / (length * level));
    } else if (!by_length) {
        follow(c, "length", volume / (width * level));
    }
    if (!varies(c, "tank depth", &depth))
        follow(c, "depth", level + t->depth_m - t->level_m);
}

static int answer_cell(const size_grid_question *q, const scenario *s, size_grid_cell *cell)
{
    const boil_tank *t = &s->plant.tank;
    boil_steady_state calm;
    boil_holding at;
    size_case c;
    cell->level_m = t->level_m;
    cell->volume_m3 = boil_tank_area(t) * t->level_m;
    int result = size_case_of(s, q->recover_s > 0 ? q->recover_s : s->plant.limits.recovery_s, q->load, &c);
    if (result == BOIL_OK)
        result = size_need_of(&c, &cell->heat_W, &at);
    size_case_free(&c);
    if (result != BOIL_OK || isnan(cell->heat_W))
        return result;
    cell->holds = at.breaks == 0;
    cell->rim_m = t->depth_m - at.freeboard_min_m + s->plant.limits.freeboard_m;
    result = boil_steady_state_at(&s->plant, cell->heat_W, &calm);
    cell->calm_W = calm.losses_W;
    return result;
}

static int ask(const size_grid_question *q, const scenario *base, size_grid_cell *cell)
{
    scenario s;
    messages m;
    changed c = {.count = 0};
    change(&c, &q->down->over.thing, cell->down);
    change(&c, &q->across->over.thing, cell->across);
    if (q->same_volume)
        keep_volume(&base->plant.tank, &c);
    messages_init(&m);
    int result = scenario_of_text(q->text, c.changes, c.count, &s, &m);
    cell->refused = result != BOIL_OK;
    if (result == BOIL_OK)
        result = answer_cell(q, &s, cell);
    messages_free(&m);
    scenario_free(&s);
    return cell->refused && result != BOIL_NO_MEMORY ? BOIL_OK : result;
}

int size_grid_of(const size_grid_question *q, const scenario *base, size_grid *out)
{
    const double none = (double)NAN;
    int result = BOIL_OK;
    *out = (size_grid){.scenario = base, .question = q};
    for (size_t i = 0; i < q->down->steps && result == BOIL_OK; i++)
        for (size_t k = 0; k < q->across->steps && result == BOIL_OK; k++) {
            size_grid_cell *cell = &out->cells[out->count++];
            *cell = (size_grid_cell){.down = size_grid_value(q->down, i),
                                     .across = size_grid_value(q->across, k),
                                     .level_m = none,
                                     .volume_m3 = none,
                                     .heat_W = none,
                                     .calm_W = none,
                                     .rim_m = none};
            result = ask(q, base, cell);
        }
    return result;
}
