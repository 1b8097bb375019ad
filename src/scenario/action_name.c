#include "scenario/action_name.h"

#include <stdio.h>

/* The words kept of a load do not name it as one; those of the other acts speak for themselves. */
said said_of(const scenario *s, size_t act)
{
    static const char *const kinds[] = {
        [BOIL_ACT_LOAD] = "load",   [BOIL_ACT_LIFT] = "lift",     [BOIL_ACT_WATER] = "water",
        [BOIL_ACT_SALTS] = "salts", [BOIL_ACT_LIQUID] = "liquid", [BOIL_ACT_HEAT] = "heat",
        [BOIL_ACT_MIXER] = "mixer", [BOIL_ACT_LID] = "lid",       [BOIL_ACT_EXHAUST] = "exhaust"};
    boil_act_kind kind = s->schedule.acts[act].kind;
    const char *words = s->said != NULL && s->act_said != NULL ? s->said[s->act_said[act]].words : "";
    said t;
    if (words[0] == '\0')
        snprintf(t.text, sizeof t.text, "%s", kinds[kind]);
    else
        snprintf(t.text, sizeof t.text, "%s%.100s", kind == BOIL_ACT_LOAD ? "load " : "", words);
    return t;
}
