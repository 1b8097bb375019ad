/* plan/pours.h -- when water is poured between two dips, and how much: as few pours as keep the band, each as late and as large as
   it can be. And when salts are put back that parts carry out.

   Between the boil's return B and the next entry T a pour may run from B + steady to T - guard, in one piece that no break cuts: it
   does so all through that window, slower where there is time, until at its end nothing is missing. The
   water missing from the bath grows by w_b while it boils and by w_q while it is quiet, and must stay below the band's room. The most
   that may be missing at B so that pouring all one can from then on still keeps the band is, from the end backwards,
       R_k = min(room, R_(k+1) - growth_k + flow length_k)                                                                       (1)
   and a window is passed over as long as the next one begins with no more than its R. Going as far as one can and then filling up
   needs the fewest stops. A bath that water missing weakens (weakens_W_kg) is kept from missing any: it is poured in every window.

   What parts carry out is bath liquid: the boiling point stays, the level falls. Once more salts are gone than owes_kg, what is
   gone is sifted in at sift_kg_s in the next window, up to its end: as much as the window has time for and the band bears, but
   no less than half of that. Water comes before them, so that the bath is never stronger on the way, and rests, so that none
   meets undissolved salt; that which belongs to the salts comes ahead too, as far as the band's lower end allows. Behind the
   last dip, once the water is back and all is out, what is gone then follows. */
#ifndef BOIL_PLAN_POURS_H
#define BOIL_PLAN_POURS_H

#include "plan/case.h"

#define BOIL_PLAN_POUR_LEAST_S 60.0 /* nobody opens a tap for less; judgement */
#define BOIL_PLAN_REST_S 120.0      /* from water to salts, as `correct` has it (analysis/correct_parts.h): judgement */

/* A bath since the boil is back of the last of so many dips, and then was missing so much water, if all had been poured that
   could be. */
typedef struct {
    double back_s, missing_kg;
    const boil_plan_dip *dips;
    size_t dips_count;
} boil_plan_calm;

/* Water missing at t, kg, after all was poured that could be. */
double boil_plan_missing(const boil_plan_case *c, const boil_plan_calm *calm, double t);

/* Salts gone at a moment, kg: before the start, and with what was lifted by then of some dips, less what was put back before they
   went in. */
double boil_plan_owed(const boil_plan_bath *b, const boil_plan_dip dips[], size_t count, double by_s);

/* Salts sifted in before a load at until_s; mass 0: none, for too few are gone, or there is no time, or water is missing. */
boil_plan_pour boil_plan_sifting(const boil_plan_case *c, const boil_plan_calm *calm, double until_s);

/* Behind the last dip, no earlier than from_s, by the end of the shift; likewise. */
boil_plan_pour boil_plan_last_sifting(const boil_plan_case *c, const boil_plan_timetable *t, double from_s);

double boil_plan_water_with(const boil_plan_bath *b, double salts_kg); /* that belongs to salts */
double boil_plan_last_out(const boil_plan_timetable *t);               /* the last lift begins, s */
double boil_plan_closes(const boil_plan_case *c,
                        const boil_plan_timetable *t); /* nobody pours from then on: the shift is over, and all out */

/* The pours and siftings of a timetable whose dips have their times, and what is left. After the last dip one more pour brings
   the bath back to what is aimed at, and goes on behind a break that cuts it; where it gains nothing, until the last dip is
   out. At the end of a shift nobody pours any more: where that comes too soon for it, R of the gap behind the last dip is what
   can still be poured in by then, so that more is poured before. */
void boil_plan_pours_of(const boil_plan_case *c, boil_plan_timetable *t);

#endif
