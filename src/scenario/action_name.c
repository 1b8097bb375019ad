#include "scenario/action_name.h"

#include <stdio.h>

/* The words kept of a load do not name it as one; those of the other actions speak for themselves. */
action_name action_name_of(const scenario *s, size_t action)
{
    static const char *const kinds[] = {
        [BOIL_ACTION_LOAD] = "load",   [BOIL_ACTION_LIFT] = "lift",     [BOIL_ACTION_WATER] = "water",
        [BOIL_ACTION_SALTS] = "salts", [BOIL_ACTION_LIQUID] = "liquid", [BOIL_ACTION_HEAT] = "heat",
        [BOIL_ACTION_MIXER] = "mixer", [BOIL_ACTION_LID] = "lid",       [BOIL_ACTION_EXHAUST] = "exhaust"};
    boil_action_kind kind = s->schedule.actions[action].kind;
    const char *words = s->words != NULL && s->action_words_at != NULL ? s->words[s->action_words_at[action]].words : "";
    action_name t;
    if (words[0] == '\0')
        snprintf(t.text, sizeof t.text, "%s", kinds[kind]);
    else
        snprintf(t.text, sizeof t.text, "%s%.100s", kind == BOIL_ACTION_LOAD ? "load " : "", words);
    return t;
}
