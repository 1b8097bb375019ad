/* practise/panel.h -- how the bath stands at a moment: what a person at the tank would want to read off. SI. */
#ifndef PRACTISE_PANEL_H
#define PRACTISE_PANEL_H

#include "base/format.h"
#include "practise/shift.h"

/* Less water that floats, or salt that lies, is not worth a word: a tenth of a pound, judgement. */
#define PANEL_LEAST_KG 0.045

typedef struct {
    boil_row row;    /* at the moment; between two rows of the trace straight between them */
    double limit_m;  /* of the freeboard */
    double heat;     /* to the tank, of that at full dial: 0 to 1 */
    double bed_kg;   /* salt not dissolved */
    size_t loads;    /* in the bath */
    double loads_kg; /* their parts */
} panel;

/* Of a history that reaches to the moment or beyond. */
panel panel_of(const shift *s, const boil_history *h, double time_s);

/* Steam in terms of what heater and losses alone would boil off: "none from boiling", "x1.2 of usual", "over x100 of usual". */
formatted_text panel_steam(const panel *p);

/* What is left to the rim should all that floats let go now: "OVER", "3.1 in"; nothing when nothing floats. */
formatted_text panel_lets_go(const panel *p, unit_system u);

/* All of it in one line. */
typedef TEXT_OF(400) panel_line;
panel_line panel_line_of(const panel *p, unit_system u);

#endif
