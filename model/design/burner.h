/* design/burner.h -- the gas burner to order: by altitude, and how far it must turn down. SI units. */
#ifndef BOIL_DESIGN_BURNER_H
#define BOIL_DESIGN_BURNER_H

/* Share of its sea-level rating that an atmospheric burner may be fired at: 1 to 2000 ft, above that 4 % less for each 1000 ft
   above sea level, so that it begins with 8 %. [NFPA 54/ANSI Z223.1 (2015), Annex E, Table E.1.1(d), as trade articles give it;
   one appliance's manual counts from 2000 ft instead, which orders less.] Down to 0.2: 20 000 ft. */
double boil_burner_derate(double altitude_m);

/* Of that other reading: 4 % less for each 1000 ft above 2000 ft. */
double boil_burner_derate_from_2000_ft(double altitude_m);

#define BOIL_BURNER_LOW_FIRE 1.05 /* of the calm losses: with less the boil is not kept; judgement */

/* Full fire to low fire. */
double boil_burner_turndown(double heat_W, double calm_W);

#endif
