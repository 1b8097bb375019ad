/* design/makeup.h -- the valve for the water that holds a boiling bath's strength and level. SI units. */
#ifndef BOIL_DESIGN_MAKEUP_H
#define BOIL_DESIGN_MAKEUP_H

#define BOIL_MAKEUP_HAND 1.5          /* valve over what is needed, for a trickle set by hand: judgement */
#define BOIL_MAKEUP_ON_OFF 3.0        /* for a valve that is opened and shut, as the automatic one is */
#define BOIL_MAKEUP_PRESSURE 275790.0 /* Pa over the room's, 40 psi: a usual main's, judgement */

/* Flow coefficient, US gal/min of water at 1 psi, by definition; and the hole, m, of a plain orifice: gpm = 29.84 Cd d^2
   sqrt(psi), d in, Cd 0.61. [NFPA 291, from memory: 2.5 in, 10 psi, Cd 1: 590 gpm] */
double boil_makeup_valve(double flow_m3_s, double pressure_Pa);
double boil_makeup_orifice(double flow_m3_s, double pressure_Pa, double discharge);
#define BOIL_MAKEUP_DISCHARGE 0.61 /* Cd of a sharp hole */

#endif
