/* plan/pours.h -- when water is poured between two dips, and how much: as few pours as keep the band, each as late and as large as
   it can be.

   Between the boil's return B and the next entry T a pour may run from B + steady to T - guard, in one piece that no break cuts: it
   does so all through that window, slower where there is time, until at its end nothing is missing. The
   water missing from the bath grows by w_b while it boils and by w_q while it is quiet, and must stay below the band's room. The most
   that may be missing at B so that pouring all one can from then on still keeps the band is, from the end backwards,
       R_k = min(room, R_(k+1) - growth_k + flow length_k)                                                                       (1)
   and a window is passed over as long as the next one begins with no more than its R. Going as far as one can and then filling up
   needs the fewest stops. A bath that water missing weakens (weakens_W_kg) is kept from missing any: it is poured in every window. */
#ifndef BOIL_PLAN_POURS_H
#define BOIL_PLAN_POURS_H

#include "plan/case.h"

#define BOIL_PLAN_POUR_LEAST_S 60.0 /* nobody opens a tap for less; judgement */

/* Water missing at t, kg, of a bath that boils since back_s and lacked missing_kg then, after all was poured that could be. */
double boil_plan_missing(const boil_plan_case *c, double back_s, double t, double missing_kg);

/* The pours of a timetable whose dips have their times, and what is left. After the last dip one more brings the bath back to what is aimed
   at, and goes on behind a break that cuts it; where it gains nothing, until the last dip is out. At the end of a shift nobody pours any
   more: where that comes too soon for it, R of the gap behind the last dip is what can still be poured in by then, so that more is poured
   before. */
void boil_plan_pours_of(const boil_plan_case *c, boil_plan_timetable *t);

#endif
