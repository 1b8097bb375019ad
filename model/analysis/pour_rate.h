/* analysis/pour_rate.h -- how fast something may go into a bath as it stands: found by running the pour with the grave
   closures, never from a rule. A pace will do when its run raises no finding of surge, freeboard, overflow, lost
   boil, floating water, or salt lying undissolved. */
#ifndef BOIL_ANALYSIS_POUR_RATE_H
#define BOIL_ANALYSIS_POUR_RATE_H

#include "boilback.h"
#include "simulate/run.h"

/* Nobody pours faster: judgement. Water: half-open garden hose, 15 L/min, 5 to 40. Dry salts: a 5 lb scoop sifted in
   every quarter of a minute, 0.15 kg/s, 0.05 to 0.5. Ready-mixed liquid: a hand pump, 0.3 kg/s, 0.1 to 1. */
#define BOIL_POUR_RATE_WATER_KG_S 0.25
#define BOIL_POUR_RATE_SALTS_KG_S 0.15
#define BOIL_POUR_RATE_LIQUID_KG_S 0.30

/* No pour takes longer than a shift: 8 h, judgement. */
#define BOIL_POUR_RATE_LONGEST_S 28800.0

/* Water that is to make a bath weaker must run in so many times as fast as the bath boils it off: 2, 1.5 to 4,
   judgement. */
#define BOIL_POUR_RATE_GAINS 2.0

/* The first finding that forbids a pour in a history of its run; NULL: none does. */
boil_outcome boil_pour_rate_forbids(const boil_plant *p, const boil_schedule *s, const boil_history *h, const char **id,
                                    const char **title);

double boil_pour_rate_by_hand(boil_action_kind kind); /* kg/s, as above */

/* An action that adds so much of a kind, of a temperature, by hand; the salts of the bath's own blend, in liquid so much
   of it. */
boil_action boil_pour_rate_action(boil_action_kind kind, double mass_kg, const double blend[BOIL_SALTS], double liquid_fraction,
                                  double temperature_K);

/* The whole minute, s, at that moment or behind it: a printed clock shows no more, so a step that begins on one is not told too
   early. A moment that passes one by rounding is that one. */
double boil_pour_rate_minute(double s);

double boil_action_mass(const boil_action *a); /* kg, of an action that adds something */
void boil_action_pour(boil_action *a, double mass_kg, double rate_kg_s);

#endif
