/* design/makeup.h -- the water that holds a boiling bath's strength and level, and the valve for it. SI units.

   Steady, what boils out is what goes in, and the heat of dilution does not appear:

       m = (Q - Q_dry)/[h_v(T_bath, p) - h_w(T_water)],    Q_dry what leaves the bath otherwise than as vapour.     (1) */
#ifndef BOIL_DESIGN_MAKEUP_H
#define BOIL_DESIGN_MAKEUP_H

/* kg/s, (1); 0 where the heat does not exceed the dry. Bath to 473 K, water 273 to 373 K. */
double boil_makeup(double heat_W, double dry_W, double bath_K, double pressure_Pa, double water_K);

#define BOIL_MAKEUP_HAND 1.5          /* valve over what is needed, for a trickle set by hand: judgement */
#define BOIL_MAKEUP_ON_OFF 3.0        /* for a valve that is opened and shut, as the automatic one is */
#define BOIL_MAKEUP_PRESSURE 275790.0 /* Pa over the room's, 40 psi: a usual main's, judgement */

/* Flow coefficient, US gal/min of water at 1 psi, by definition; and the hole, m, of a plain orifice: gpm = 29.84 Cd d^2
   sqrt(psi), d in, Cd 0.61. [NFPA 291, from memory: 2.5 in, 10 psi, Cd 1: 590 gpm] */
double boil_makeup_valve(double flow_m3_s, double pressure_Pa);
double boil_makeup_orifice(double flow_m3_s, double pressure_Pa, double discharge);
#define BOIL_MAKEUP_DISCHARGE 0.61 /* Cd of a sharp hole */

#endif
