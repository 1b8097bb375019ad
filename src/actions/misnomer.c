#include "actions/misnomer.h"

#include "base/words.h"

#define FILL                                                                                                                   \
    "say how much and how fast, 'water 2 gal over 4 min', or up to where, 'water at 0.5 gal/min until the mark, at most 15 "   \
    "gal'; only while it boils"
#define DIAL "set the dial by the share of full fire that it gives, such as 'heat 30 %'; how much that is the burner says"
#define OF_WHAT "say of what and how fast: 'water 2 gal over 4 min', 'salts 10 lb over 10 min', 'liquid 5 gal over 5 min'"
#define SLUDGE                                                                                                                 \
    "sludge is not followed, and no act takes it out alone; what goes with it is bath liquid: 'bail 5 gal over 5 min' or "     \
    "'drain 5 gal over 5 min'"

/* Where one begins like another, the longer one stands first. */
/* clang-format off */
static const struct {
    const char *typed, *answer;
} table[] = {
    {"fill up", FILL}, {"fill", FILL}, {"refill", FILL}, {"top up", FILL}, {"top off", FILL}, {"top", FILL}, {"make up", FILL},
    {"turn down", DIAL}, {"turn up", DIAL}, {"turn", DIAL}, {"low fire", DIAL}, {"high fire", DIAL}, {"low flame", DIAL},
    {"pour", OF_WHAT}, {"dump", OF_WHAT}, {"add", OF_WHAT}, {"give", OF_WHAT},
};
/* clang-format on */

/* Whatever is done with it. */
static size_t sludge_at(const cursor *act)
{
    for (const char *at = act->at; at < act->end; at++) {
        size_t taken = words_taken(at, act->end, "sludge");
        if (taken > 0)
            return (size_t)(at - act->at) + taken;
    }
    return 0;
}

const char *misnomer_answer(const cursor *act, size_t *length)
{
    *length = sludge_at(act);
    if (*length > 0)
        return SLUDGE;
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        *length = words_taken(act->at, act->end, table[i].typed);
        if (*length > 0)
            return table[i].answer;
    }
    return NULL;
}
