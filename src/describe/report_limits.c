#include "describe/report.h"

/* boilback-limits(7) shows it as it is printed. */
const char report_purpose[] = "One well-mixed bath in one of two states: quiet, with its temperature free, or boiling, with "
                              "its temperature locked to the boiling point of what it contains; and beside it the few things "
                              "that are not mixed and make the trouble: water floating on top, steam held in the pool, and the "
                              "steel. Mass and energy close to 1e-9 in every run; the closure is printed and tested.";

const char *const report_limits[] = {
    "Measured data of the mixed salts exist (boilback-limits(7) says where) and could not be compared. At a given "
    "strength the real boiling point may lie 5 K lower or 3 K higher (much nitrate: 6 and 4; plain NaOH: 4 and 2); elevation "
    "factor corrects for a shop that knows both. Given the boiling point, most predictions hardly depend on it; the grave runs "
    "have the graver end of it.",
    "Published laws differ up to tenfold in how fast floating water turns over, sixfold in how much heat reaches it "
    "and threefold in how far steam swells a bath, and no one number errs on the side of the warning. So a case is run with "
    "several sets of these laws: what only some of them show is called possible. "
    "When a layer lets go and how high it spits no such model can say; steam far above what lifts the bath to the rim "
    "reads as more than that.",
    "Swell is the upper estimate of a boiling pool heated from its floor; foam from oil or soap can exceed it.",
    "Evaporation is fitted to hot still water, which it meets within a quarter; over a strong bath nothing was measured, and "
    "its "
    "skin of stronger salt, taken from film theory, holds a quarter to a half back: half to 1.3 of it may be right.",
    "Dry salt dissolves by a published mass-transfer law, but its grain size, the bed it makes and what a bed does to a heated "
    "floor are judgement; solubilities beside strong hydroxide are calculated, no measured table was found.",
    "Boiling stops everywhere at once here; a real bath may go on at the heater with heat stored below its surface. "
    "So a boil is back after nothing (weakened only, that store full) to what is said without any. Dense packs of "
    "parts are a slab with a wide range of conductivity. Splashing, what leaves over the rim, and people are not "
    "modelled.",
    "Above 195 degC, beyond the strength the correlations were made for, with 5 mm left of a bath that boils dry, and where "
    "the tank is full, a run "
    "stops there and says so.",
    NULL,
};
