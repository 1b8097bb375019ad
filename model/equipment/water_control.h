/* equipment/water_control.h -- automatic water addition: a thermometer, a valve, and what shuts it.

   The sensor follows the bath's temperature (that of the liquid below any layer) with a first-order lag. On/off: the valve
   opens when the sensor is above set point + differential/2 and shuts below set point - differential/2. Time-proportioned:
   in every period the valve is open for the share (sensor - set point)/band + 1/2, held within 0 and 1. The valve actions a
   dead time after the decision. Interlock: it stays shut, and shuts, while the bath does not boil. Low level: the heat is
   cut off while the still level is below it. */
#ifndef BOIL_EQUIPMENT_WATER_CONTROL_H
#define BOIL_EQUIPMENT_WATER_CONTROL_H

#include <stdbool.h>

typedef enum { BOIL_WATER_CONTROL_NONE, BOIL_WATER_CONTROL_ON_OFF, BOIL_WATER_CONTROL_PROPORTIONED } boil_water_control_mode;

typedef struct {
    boil_water_control_mode mode;
    double set_point_K;      /* 373.15 to 473.15 */
    double differential_K;   /* on/off: 0.1 to 20 */
    double band_K;           /* proportioned: 0.2 to 20 */
    double period_s;         /* proportioned: 10 to 3600 */
    double rate_kg_s;        /* open valve; > 0, to 10 */
    double water_K;          /* 273.15 K to the boiling point of water */
    double dead_time_s;      /* 0 to 600 */
    double sensor_lag_s;     /* 0 to 600; a thermometer in a pocket: 30 */
    bool only_while_boiling; /* the interlock */
    double low_level_m;      /* still level below which the heat is cut off; 0: none */
} boil_water_control;

/* No control. Fields at their defaults: 1 K, 2 K band, 120 s, 10 s dead time, 30 s lag, interlock on, no cut-off. */
boil_water_control boil_water_control_default(void);
const char *
boil_water_control_problem(const boil_water_control *c); /* NULL, or what is wrong, naming the range; NONE is never wrong */

/* Share of a period the proportioned valve is open at a sensor temperature, 0 to 1. */
double boil_water_control_share(const boil_water_control *c, double sensor_K);

#endif
