/* equipment/ambient.h -- the air around the tank. */
#ifndef BOIL_EQUIPMENT_AMBIENT_H
#define BOIL_EQUIPMENT_AMBIENT_H

typedef struct {
    double pressure_Pa;       /* station pressure, not reduced to sea level; 60 to 110 kPa */
    double temperature_K;     /* 243 to 333.15 K (-30 to 60 degC) */
    double relative_humidity; /* 0 to 1 */
    double draught_m_s;       /* air speed over the bath; 0 to 3 */
} boil_ambient;

boil_ambient boil_ambient_default(void);                 /* 1 atm, 20 degC, 50 %, 0.3 m/s */
const char *boil_ambient_problem(const boil_ambient *r); /* NULL, or what is wrong with it, naming the range */

/* Station pressure at an altitude, 101325 (1 - 2.25577e-5 z)^5.25588 Pa.
   [International Standard Atmosphere, ISO 2533:1975]; -400 to 4000 m. */
double boil_ambient_pressure_at_altitude(double altitude_m);

/* Partial pressure of water vapour in the room's air, Pa: humidity times saturation at its temperature
   (below 0 degC the 0 degC saturation is used: an upper bound of some 600 Pa). */
double boil_ambient_vapour_pressure(const boil_ambient *r);

#endif
