/* analysis/heater_size.h -- how much heat: answers found by running the case itself. The heat is that to the tank at full dial;
   the heater is made as large as it takes. */
#ifndef BOIL_ANALYSIS_HEATER_SIZE_H
#define BOIL_ANALYSIS_HEATER_SIZE_H

#include <stdbool.h>

#include "boilback.h"
#include "simulate/run.h"
#include "sizing/holding.h"

/* No heat, W, is sought beyond: a hundred times what the surface loses. */
double boil_heater_size_most(const boil_plant *p);

/* Smallest heat to the tank at full dial, W, with which the run ends boiling, bracketed to half a per cent and given from the
   upper side: at *heat_W it does. BOIL_NO_ROOT when not even a hundred times the surface's losses would, BOIL_OUT_OF_RANGE when
   the run leaves the properties' range first. */
boil_outcome boil_heater_size_to_boil(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *heat_W);

/* Largest mass, kg, of the addition of ready-mixed liquid that is action `index`, poured over the same time, after which the
   boil is not lost for longer than limit_s: bracketed to one per cent, given from the lower side. BOIL_NO_ROOT when even a
   thousandth of it is too much. */
boil_outcome boil_heater_size_largest_liquid(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                             size_t index, double limit_s, double *mass_kg);

/* boil_heater_size_for_recovery for a part of a search, whose case need not stand by itself; its schedule held or not yet. */
boil_outcome boil_heater_size_for_recovery_unchecked(const boil_holding_case *of, double precision, double *heat_W);

/* By the grave laws alone, of a schedule that is held, and begun near a heat that another trial needed, W (0: none is known). */
boil_outcome boil_heater_size_near(const boil_holding_case *of, double near_W, double precision, double *heat_W);

double boil_heater_rounded_up(double heat_W); /* to four digits, as a size is told */

/* Whether, with that heat and the precision more, of a schedule that is held, it holds in all by all laws; *first as of
   boil_holding_breaks_by_any. No where the grave laws' own heat, which is less, breaks something already. *more: how many times
   what its beginning needs the whole is thought to need, where the search begins, 1 for all that is known; and does, then.
   Outcomes as of boil_heater_size_for_recovery. */
boil_outcome boil_heater_size_holds(const boil_holding_case *of, double precision, double *more, size_t *first, bool *yes);

#endif
