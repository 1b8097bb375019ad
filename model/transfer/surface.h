/* transfer/surface.h -- heat and vapour leaving through walls and the free surface.

   One air film serves evaporation, steam and convection. A mass flow e evaporates from area A while steam w
   leaves the pool through the same area:

       e/A + w/A = g ln[(p - pa)/(p - pw)],   e >= 0 while the right side is positive        (1)
       g = f_e (a + b v) p / L(Ts),  a = 0.089 kW/m2/kPa, b = 0.0782 kW/m2/kPa per m/s           (2)
   Where the film carries less than w, e = 0: the steam needs no film, and pushes the air away.

   [Carrier's open-tank formula, as in ASHRAE Applications, with the high-flux (Stefan) correction of film theory].
   L is pure water's latent heat: the published formula gives heat, and was made from a mass flow with it. The skin is cooler than
   the bath, and what evaporates comes out of the bath:
       h_liq (T - Ts) = (e/A)(hv(Ts) - H_w) + radiation + convection.                          (3)
   H_w is the partial enthalpy of the bath's water: in a strong bath a kilogram takes a fifth more heat than out of water.
   Convection follows from the same film by the Chilton-Colburn analogy, less what the vapour in it takes away (transfer/skin.h):
       h_c = f_c (g/f_e) (M_air/M_water) cp_air Le^(2/3) x phi/(exp phi - 1),  phi = (e + w) c_pv/(A h_c at none).  (4)
   The skin is stronger than the bath by (1) of transfer/skin.h, up to the end of the vapour pressure's correlation.        (5)
   A cold strong bath may take moisture from the air: then e < 0 and w does not matter.

   One number is fitted, h_liq, to what evaporates from still water at 60 degC and more, 24 rows of two tables and a correlation
   (tests/published/open_tank_losses.csv; E45 to E47 of whole_bath.csv): with 1500 W/m2K the mean lies 16 % low, with 2000 12 %, with
   3000 7 %; above 2400 the hottest row of one table is left by more than its band, and in wind (E02) 2000 is 41 % high, so 2000 it
   is. By it E44 to E49 lie +5, -11, -15, -9, +10 and 0 % off, cool pools (E50 to E52) 17 to 38 % high, and two pots (E23, E24) boil
   sooner without a lid than they did. Nothing was measured above a strong bath. All in all f_e is known to 0.5 to 1.3. */
#ifndef BOIL_TRANSFER_SURFACE_H
#define BOIL_TRANSFER_SURFACE_H

#include <stdbool.h>

#include "boilback.h"
#include "equipment/ambient.h"
#include "equipment/tank.h"

boil_losses boil_losses_default(void);

/* The liquid below a surface. ln of the vapour pressure at the skin, Pa, where every molality is so many times that of the liquid, and
   its slopes by temperature, 1/K, and by ln of that. */
typedef struct {
    double temperature_K;
    double boiling_K, boiling_by_log_stronger_K; /* boiling point and its slope: they only aim the search */
    double water_J_kg;                           /* H_w: the partial enthalpy of its water */
    double density_kg_m3, salt_fraction;
    double salt_transfer_m_s; /* k_L of (5); infinite: the skin is as strong as the liquid */
    double strongest;         /* the skin is held at so many times */
    double (*log_pressure)(void *of, double temperature_K, double stronger, double *by_K, double *by_log_stronger);
    void *of;
} boil_surface_liquid;

typedef struct {
    double evaporation_kg_s; /* e over the whole area; negative: taken up from the air */
    double radiation_W, convection_W;
    double vapour_J_kg; /* h_v of what evaporates; 0 where nothing does */
    double skin_K;      /* Ts */
} boil_surface_flow;

/* The air over a surface, worked out once for all of it that it lies on. */
typedef struct {
    double pressure_Pa, log_pressure, room_K;
    double vapour_Pa, log_vapour, log_dry; /* pa, ln pa, and ln[(p - pa)/p], below 0 */
    double film_W_m2;                      /* g L of (2) where f_e is 1 */
} boil_surface_air;

boil_surface_air boil_surface_air_of(const boil_ambient *ambient);

/* The skin that was found last: where it evaporates, the next search starts from where it must be by now. Zero: from the liquid
   alone. */
typedef struct {
    double liquid_K, steam_kg_m2s;     /* what it was found for, w/A, */
    double skin_K, evaporation_kg_m2s; /* Ts and e/A, */
    double skin_by_K, skin_by_steam;   /* and how they move with it */
    double evaporation_by_K, evaporation_by_steam;
    bool known; /* all that */
    bool dry;   /* nothing evaporated under the steam */
} boil_surface_skin;

/* Solve (1) to (5) for the skin, for one or two vapour pressures. The start moves the answer by less than 1e-3 K of the skin and
   1e-4 of what is carried. Flows are continuous in bath temperature and steam; a bath at or above its boiling point is no
   exception. area 0 gives zero flow and the bath's temperature. Writes *out, and the skin to start from into *near; returns
   BOIL_OK or BOIL_NO_ROOT (only for values out of range or not finite). */
boil_outcome boil_surface_exchange(const boil_losses *l, const boil_surface_air *air, const boil_surface_liquid *liquid,
                                   double area_m2, double steam_leaving_kg_s, boil_surface_skin *near, boil_surface_flow *out);

/* Heat through the walls, W: cooled area times U (T - T_room). U is the scenario's, or 1/(1/h_o + insulation/k) with
   h_o natural convection and radiation at the outside (whatever the draught). No steel wall: no loss unless a
   coefficient is given. */
double boil_wall_coefficient(const boil_losses *l, const boil_tank *t, const boil_ambient *ambient, double liquid_K); /* U */
double boil_wall_loss(const boil_losses *l, const boil_tank *t, const boil_ambient *ambient, double liquid_K);        /* W */

/* The same from a table of the insulated wall's U that a run fills where it comes by: cubics over a kelvin each, from there alone, so that
   no answer hangs on another. Within 1e-8 of itself. Zero it for an empty one; it belongs to one tank in one room. */
enum { BOIL_WALL_CELLS = 64 };
typedef struct {
    int kelvin[BOIL_WALL_CELLS]; /* of difference to the room, that a cell begins with; 0: empty */
    double U[BOIL_WALL_CELLS][4];
} boil_wall_table;
double boil_wall_table_loss(boil_wall_table *w, const boil_losses *l, const boil_tank *t, const boil_ambient *ambient,
                            double liquid_K);

#endif
