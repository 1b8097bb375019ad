/* case/carried_in.h -- what parts bring from the rinse: their temperature, and water trapped in hollows that are open.

   Parts come to the rinse as warm as the room and hang there for its dwell: a lumped body behind 500 W/m2K (natural
   convection in water; judgement, 300 to 1000) and its own inner resistance r/((d+2) k),
       T = T_rinse + (T_room - T_rinse) exp(-dwell/tau),  tau = m c R/A,  R = 1/500 + r/((d+2) k).                        (1)
   Quarter-inch plate: tau 23 s.

   A hollow of volume V, its mouth narrow or down, keeps its water in. It warms through the steel by U 333 W/m2K (1000 outside,
   500 inside; judgement, 150 to 600) over the surface of a ball of that volume,
       tau = rho c V^(1/3)/(4.836 U),                                                                                      (2)
   64 s for 15 mL. At water's own boil it lets go: a millilitre of steam is 1.7 litres and throws the rest out, below the
   surface, all of it within a tenth of tau (equal hollows spread about that much; judgement). A boiling bath mixes it in; on a
   quiet one it rises as a warm plume and floats. Lifted before, it comes out again. Pressure in closed hollows is not
   modelled: a closed hollow bursts. */
#ifndef BOIL_CASE_CARRIED_IN_H
#define BOIL_CASE_CARRIED_IN_H

#include "boilback.h"

#define BOIL_HOLLOW_RELEASE 0.1 /* of tau */

/* The hollows of a load together; all 0 where no water is trapped. */
typedef struct {
    double water_kg, entry_K; /* no hotter than water's boil in the room */
    double conductance_W_K, release_s;
} boil_hollows;
boil_hollows boil_hollows_of(const boil_load *l, double saturation_K);

/* K, of the film of water on the parts: what the load says, else as the parts; that of liquid water. */
double boil_carried_in_K(const boil_load *l, double saturation_K);

#endif
