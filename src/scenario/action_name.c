#include "scenario/action_name.h"

#include <stdio.h>

/* The words kept of a load do not name it as one; those of the other acts speak for themselves. */
said action_name_of(const scenario *s, size_t act)
{
    static const char *const kinds[] = {
        [BOIL_ACTION_LOAD] = "load",   [BOIL_ACTION_LIFT] = "lift",     [BOIL_ACTION_WATER] = "water",
        [BOIL_ACTION_SALTS] = "salts", [BOIL_ACTION_LIQUID] = "liquid", [BOIL_ACTION_HEAT] = "heat",
        [BOIL_ACTION_MIXER] = "mixer", [BOIL_ACTION_LID] = "lid",       [BOIL_ACTION_EXHAUST] = "exhaust"};
    boil_action_kind kind = s->schedule.acts[act].kind;
    const char *words = s->said != NULL && s->act_said != NULL ? s->said[s->act_said[act]].words : "";
    said t;
    if (words[0] == '\0')
        snprintf(t.text, sizeof t.text, "%s", kinds[kind]);
    else
        snprintf(t.text, sizeof t.text, "%s%.100s", kind == BOIL_ACTION_LOAD ? "load " : "", words);
    return t;
}
