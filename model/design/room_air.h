/* design/room_air.h -- what a hood does to the room: the heat for the air that comes in for it, and the moisture in the duct.
   SI units. */
#ifndef BOIL_DESIGN_ROOM_AIR_H
#define BOIL_DESIGN_ROOM_AIR_H

/* W to warm air_m3_s from the winter's temperature to the room's: 1.08 d Q dT Btu/h, Q cfm, d the pressure over the standard
   one. [ACGIH, from memory] */
double boil_room_air_heat(double air_m3_s, double pressure_Pa, double rise_K);

/* J a year: 0.154 Q D dg d Btu, D h a week, dg degree-days of degF. [ACGIH, from memory; 1.08 x 24/168 = 0.1543, which is
   taken] */
double boil_room_air_year(double air_m3_s, double pressure_Pa, double hours_a_week, double degree_days_K);

/* K at which the duct's air begins to drip, the vapour of the bath mixed into the room's air. NaN without air. */
double boil_room_air_dew_point(double air_m3_s, double pressure_Pa, double room_K, double room_vapour_Pa, double vapour_kg_s);

#endif
