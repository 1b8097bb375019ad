/* case/plant.h -- everything that stands there before the first action: tank, bath, heater, losses, room, limits. */
#ifndef BOIL_CASE_PLANT_H
#define BOIL_CASE_PLANT_H

#include <stdbool.h>

#include "boilback.h"
#include "equipment/ambient.h"
#include "equipment/heater.h"
#include "equipment/tank.h"
#include "equipment/water_control.h"
#include "properties/solution.h"
#include "transfer/surface.h"
#include "transfer/swell.h"
#include "transfer/water_layer.h"

/* How the scenario states the strength of the bath. */
typedef enum { BOIL_INITIAL_BY_SALT_FRACTION, BOIL_INITIAL_BY_STRENGTH, BOIL_INITIAL_BY_BOILING_POINT } boil_initial_basis;

typedef struct {
    double blend[BOIL_SALTS]; /* dry salts by mass: NaOH, NaNO3, NaNO2; sum 1; of plain water all may be 0 */
    boil_initial_basis basis;
    double value;         /* kg/kg solution; kg salts per m3 of bath at its boiling point (0: plain water); or K */
    double temperature_K; /* at the start; 0: at its boiling point */
} boil_initial_charge;

typedef struct {
    double recovery_s;                                /* longest a load may stop the boil; 1 to 86400 */
    double freeboard_m;                               /* least distance from the swelled surface to the rim; 0 to 2 */
    double boiling_point_low_K, boiling_point_high_K; /* the band the bath should hold while it boils */
    double load_per_volume_kg_m3; /* heaviest usual load per volume of bath: 1 lb per 2 gal; common practice, no source */
} boil_limits;

/* What can be switched by actions. */
typedef struct {
    double mixer_W; /* shaft power that reaches the liquid; 0 to 1e5; default 0.2 W per litre of bath when 0 */
    bool mixer_on, lid_on, exhaust_on; /* at the start: off, off, on */
    double still_draught_m_s;          /* air speed with the exhaust off; 0.1, 0 to 3 */
    double lid_W_m2K;                  /* heat through a lid per difference of bath and room: 7, 1 to 20, judgement */
    double lid_return;                 /* share of what condenses under the lid that drips back; 0.8, 0 to 1, judgement */
    double grain_m;                    /* size of dry salt: 1 mm, 0.2 to 10 mm, judgement */
} boil_fittings;

typedef struct {
    boil_tank tank;
    boil_initial_charge charge;
    boil_heater heater;
    boil_losses losses;
    boil_ambient ambient;
    boil_limits limits;
    boil_water_control control;
    boil_fittings fittings;
    double elevation_factor; /* 0.85 to 1.10; see properties/solution.h */
    boil_transport transport;
    boil_swell pool;
    boil_water_layer_law layer;
} boil_plant;

boil_plant boil_plant_default(void);

double boil_plant_mixer_power(const boil_plant *p); /* W: as stated, or 0.2 W per litre of starting bath */

/* NULL, or the first thing that is wrong with the plant as a whole, naming the range. */
const char *boil_plant_problem(const boil_plant *p);

/* What the charge comes to: composition, boiling point, mass. BOIL_OUT_OF_RANGE or BOIL_NO_ROOT when there is no such bath. */
typedef struct {
    boil_mixture mixture; /* kg of water and each salt in the tank */
    double salt_fraction, boiling_point_K, temperature_K, density_kg_m3 /* at its temperature */, volume_m3;
} boil_initial_state;
boil_outcome boil_plant_initial(const boil_plant *p, boil_initial_state *out);

#endif
