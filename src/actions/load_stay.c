#include "actions/load_stay.h"

#include <math.h>

#include "base/words.h"

static const load_stay_clause listed[] = {
    {"for TIME at the boil",
     "how long it stays, counted only while it is in and the bath boils: it comes out when it has had that"},
    {"no later than MOMENT", "of one that counts so: it comes out then all the same, and does not go in later"},
};

load_stay_clause load_stay_listed(size_t index)
{
    return index < sizeof listed / sizeof listed[0] ? listed[index] : (load_stay_clause){NULL, NULL};
}

/* Takes "at the boil" off the end of a part. */
static bool counts_at_boil(cursor *part)
{
    for (const char *at = part->at; at < part->end; at++) {
        size_t taken = words_taken(at, part->end, "at the boil");
        if (taken == 0 || at + taken != part->end)
            continue;
        part->end = words_trim(part->at, at);
        return true;
    }
    return false;
}

action_clause_end load_stay_read(cursor *part, const action_reader *r, load_stay *s, boil_load *l)
{
    const char *start = part->at;
    if (cursor_take(part, "no later than"))
        return action_latest_read(r, part, start, &s->later, &l->latest_s) ? ACTION_CLAUSE_READ : ACTION_CLAUSE_WRONG;
    if (words_taken(part->at, part->end, "for") > 0 && counts_at_boil(part))
        l->at_boil = true;
    return ACTION_CLAUSE_UNKNOWN;
}

bool load_stay_settle(const load_stay *s, const cursor *place, const boil_load *l)
{
    return s->later == NULL || l->at_boil ||
           cursor_error(place, s->later,
                        "'no later than' belongs to a time that counts at the boil: 'for 20 min at the boil'; without it 'for' "
                        "says when it comes out");
}

static void add_at_boil(const action_view *v, action_text *t)
{
    const boil_load *l = &v->action->is.load;
    TEXT_ADD(t->text, ", in until it has had %s at the boil", format_duration(l->immersed_s).text);
    if (l->latest_s > 0)
        TEXT_ADD(t->text, ", out at %s at the latest", format_clock_exact(v->start_s, l->latest_s).text);
}

/* Until when, or for how long where the clock would be that of one load only. */
void load_stay_add(const action_view *v, action_text *t)
{
    double immersed_s = v->action->is.load.immersed_s;
    if (v->action->is.load.at_boil)
        add_at_boil(v, t);
    else if (!isfinite(immersed_s))
        TEXT_ADD(t->text, ", in until lifted");
    else if (v->many || isnan(v->time_s))
        TEXT_ADD(t->text, ", in for %s", format_duration(immersed_s).text);
    else
        TEXT_ADD(t->text, ", out at %s", format_clock_exact(v->start_s + v->time_s, immersed_s).text);
}

void load_stay_lift_add(const action_view *v, action_text *t)
{
    const boil_load *l = &v->action->is.load;
    if (!l->at_boil)
        return;
    TEXT_ADD(t->text, "once it has had %s at the boil", format_duration(l->immersed_s).text);
    if (l->latest_s > 0)
        TEXT_ADD(t->text, ", or at %s", format_clock_exact(v->start_s, l->latest_s).text);
}
