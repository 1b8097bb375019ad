#include "actions/pour_hangs.h"

#include "acts/tap.h"
#include "base/words.h"

static bool goal_level(const action_reader *r, cursor *c, boil_pour *p, double level_m)
{
    p->goal = BOIL_GOAL_LEVEL;
    p->goal_value = level_m;
    return level_m < r->plant->tank.depth_m || cursor_error(c, c->at, "this level is above the rim");
}

static bool read_goal(const action_reader *r, cursor *c, boil_pour *p)
{
    static const bounds levels = {"m", 0.02, 5}, boils = {"degC", 80, 200};
    const boil_tank *t = &r->plant->tank;
    quantity q;
    if (cursor_take(c, "the mark"))
        return goal_level(r, c, p, t->mark_m > 0 ? t->mark_m : t->level_m);
    if (cursor_take(c, "level"))
        return quantity_read(c, "level", UNIT_OF(DIM_LENGTH), &q) && quantity_within(c, "level", &q, &levels) &&
               goal_level(r, c, p, q.si);
    if (!cursor_take(c, "boiling point"))
        return cursor_error(c, c->at, "say until what: 'the mark', 'level 20 in' or 'boiling point 285 degF'");
    if (!quantity_read(c, "boiling point", UNIT_OF(DIM_TEMPERATURE), &q) || !quantity_within(c, "boiling point", &q, &boils))
        return false;
    p->goal = BOIL_GOAL_BOILING_POINT;
    p->goal_value = q.si;
    return true;
}

bool pour_hangs_goal(const action_reader *r, cursor *c, pour_hangs *h, boil_pour *p)
{
    cursor_done(c);
    h->goal = c->at;
    if (!read_goal(r, c, p))
        return false;
    h->goal_length = (size_t)(c->at - h->goal);
    return cursor_expect_end(c);
}

static bool take_once(const cursor *part, const char *at, const char *words, bool *said)
{
    bool first = action_clause_first(part, at, words, *said);
    *said = true;
    return first && cursor_expect_end(&(cursor){part->messages, part->source, part->line, part->at, part->end});
}

bool pour_hangs_most(const action_reader *r, cursor *part, const char *start, unsigned amounts, pour_hangs *h)
{
    const own_measure *measure;
    double count;
    return action_clause_first(part, start, "at most", h->most.text != NULL) &&
           measure_amount(part, &r->measures, "at most", amounts, &h->most, &measure, &count) && cursor_expect_end(part);
}

bool pour_hangs_clause(const action_reader *r, cursor *part, unsigned amounts, pour_hangs *h, boil_action *a, bool *taken)
{
    cursor_done(part);
    const char *start = part->at;
    *taken = true;
    if (cursor_take(part, "at most"))
        return pour_hangs_most(r, part, start, amounts, h);
    if (cursor_take(part, "no later than"))
        return action_latest_read(r, part, start, &h->later, &a->pour.no_later_s);
    if (cursor_take(part, "while boiling"))
        return take_once(part, start, "while boiling", &a->pour.while_boiling);
    if (cursor_take(part, "stop with the boil"))
        return take_once(part, start, "stop with the boil", &a->pour.once);
    *taken = false;
    return true;
}

bool pour_hangs_settle(const cursor *place, const pour_hangs *h, const boil_action *a)
{
    const boil_pour *p = &a->pour;
    bool waits = a->wait.state != BOIL_WAIT_NONE || a->wait.follows;
    if (p->goal != BOIL_GOAL_NONE && h->most.text == NULL && h->later == NULL)
        return cursor_error(place, h->goal, "'until %s' needs a stop: add ', at most 20 gal' or ', no later than 7:30'",
                            words_quoted(h->goal, h->goal_length).text);
    if (p->goal == BOIL_GOAL_NONE && h->most.text != NULL)
        return cursor_error(place, h->most.text, "'at most' belongs to 'until'; here the amount is said");
    if (p->while_boiling && p->once)
        return cursor_error(place, place->at, "'stop with the boil' pours only while it boils: leave 'while boiling' out");
    if (p->while_boiling && p->goal == BOIL_GOAL_BOILING_POINT)
        return cursor_error(place, place->at,
                            "'until boiling point' pours only while it boils, as it is read then: leave 'while boiling' out");
    if (h->later != NULL && !waits && p->goal == BOIL_GOAL_NONE && !p->while_boiling && !p->once)
        return cursor_error(place, h->later, "'no later than' has no effect: this pour waits for nothing, 'over' says its end");
    return true;
}

void pour_hangs_add(const action_view *v, action_text *t)
{
    const boil_pour *p = &v->action->pour;
    if (p->goal == BOIL_GOAL_LEVEL)
        TEXT_ADD(t->text, "; until the level is %s", action_amount_of(v->units, DIM_LENGTH, p->goal_value).text);
    if (p->goal == BOIL_GOAL_BOILING_POINT)
        TEXT_ADD(t->text, "; until it boils at %s", action_amount_of(v->units, DIM_TEMPERATURE, p->goal_value).text);
    if (p->while_boiling)
        TEXT_ADD(t->text, "; only while it boils");
    if (p->once)
        TEXT_ADD(t->text, "; only until the boil stops");
    if (p->no_later_s > 0)
        TEXT_ADD(t->text, "; no later than %s", format_clock(v->start_s, p->no_later_s).text);
}

const char *pour_hangs_end_of(boil_pour_end end)
{
    static const char *const words[] = {
        [BOIL_POUR_GOES_ON] = "the shift ended",     [BOIL_POUR_ALL_IN] = "all of it",
        [BOIL_POUR_GOAL] = "the gauge shows it",     [BOIL_POUR_TIME] = "its time was over",
        [BOIL_POUR_BOIL_LOST] = "the boil was lost", [BOIL_POUR_NEXT] = "the next of the same line came"};
    return words[end];
}
