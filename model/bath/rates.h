/* bath/rates.h -- everything that follows from a state of the bath, part by part (bath/rates_view.h), and the rates of its
   unknowns: equations (1) and (2) of bath/bath.h. Nothing that is given is changed but the guess, and that only shortens
   searches: what follows from a state does not depend on what was evaluated before. */
#ifndef BOIL_BATH_RATES_H
#define BOIL_BATH_RATES_H

#include "boilback.h"
#include "bath/rates_view.h"

/* For a bath near a temperature; the tables are kept by reference. */
boil_rates_guess boil_rates_guess_at(double temperature_K, boil_rates_tables *tables);

/* What follows from (t, y); dydt may be NULL. BOIL_NO_ROOT, BOIL_NOT_FINITE: the properties refuse this state; the parts before
   the one that failed are filled in. */
boil_outcome boil_rates_at(const boil_bath *b, double t, const double y[], boil_rates_guess *g, boil_rates_view *v,
                           double dydt[]);

/* m: at t, of a state y that lies a `share` of the way from one that v is of to one that w is of, as far as levels.upper_m goes with
   what there is: what a kilogram takes up is drawn straight between them. */
double boil_rates_level_between(const boil_bath *b, const boil_rates_view *v, const boil_rates_view *w, double share, double t,
                                const double y[]);

/* Of so much more, or more a second, of each unknown of the bath, the heat that no component has brought as its partial enthalpy: it
   warms a quiet bath, J or W. */
double boil_rates_spare_heat(const boil_rates_solution *s, const double more[BOIL_RATES_HELD]);

/* How far the properties of a solution that was found still hold. */
boil_range boil_rates_range(const boil_bath *b, const boil_rates_solution *s);

/* How the rates of one of the bodies hanging in it move with its own unknowns, own_by_s[i * stride + k] of rate i by unknown k, and the
   heat that it takes, W by each: all that the bath knows of it. */
void boil_rates_body_slopes(const boil_bath *b, size_t body, double t, const double y[], const boil_rates_view *v,
                            size_t stride, double own_by_s[], double heat_W[]);

#endif
