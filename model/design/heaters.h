/* design/heaters.h -- other ways to give a bath its heat: a fired immersion tube, electric elements, a steam coil. SI units. */
#ifndef BOIL_DESIGN_HEATERS_H
#define BOIL_DESIGN_HEATERS_H

/* A tube fired from within. Length, ft = c sqrt(heat, kBtu/h), c 0.75, 0.95, 1.21, 1.55, 2.00 at 60, 65, 70, 75, 80 %: a fit
   within 4 % to a sizing table for water at 180 degF and 300 to 2000 kBtu/h; beyond that it extrapolates. [The table was read
   in part, and prints no formula.] NaN for a share outside 60 to 80 %. */
double boil_tube_length(double heat_W, double efficiency); /* m, along its middle */

/* The share of its fuel that the same tube gives a bath at a temperature: 2 points less for each 105 degF above 180 degF,
   worked out. */
double boil_tube_efficiency_at(double efficiency, double bath_K);

#define BOIL_TUBE_EFFICIENCY 0.70 /* in water at 180 degF, judgement; 0.60 to 0.80 */

/* Flux at an element's face, W/m2. Tables that heater handbooks reprint have 25 W/in2 for 10 % caustic to 210 degF and for 75 %
   to 180 degF [from memory], and 22 for a steel sheath in alkaline cleaners [a vocational training text of 2024]: none is for
   50 % at 285 degF. */
#define BOIL_ELEMENT_FLUX 23250.0       /* 15 W/in2: 10 to 20, judgement, for what salt crusts on it */
#define BOIL_ELEMENT_STEEL_MOST 34100.0 /* 22 W/in2, a steel sheath */
#define BOIL_ELEMENT_MOST 38750.0       /* 25 W/in2, any */

double boil_element_area(double heat_W, double flux_W_m2); /* m2 */

/* A coil of saturated steam: Q = U A (T_steam - T_bath - dT_head), steam Q/h_fg. */
typedef enum {
    BOIL_COIL_CANNOT,   /* the steam is no hotter than the bath at the coil: it would cool it */
    BOIL_COIL_TOO_NEAR, /* by less than 10 degF: no area is worth its name */
    BOIL_COIL_SIZED
} boil_coil_verdict;

typedef struct {
    double heat_W;
    double bath_K;  /* at the coil: boiling point at the surface, and what the head above it adds */
    double steam_K; /* saturated, 273 to 473 K */
    double coefficient_W_m2K;
} boil_coil;

typedef struct {
    boil_coil_verdict verdict;
    double difference_K; /* steam over bath; negative: it cools */
    double area_m2;      /* NaN unless sized */
    double steam_kg_s;   /* NaN unless sized; trap and condensate line for twice that at the start, judgement */
} boil_coil_size;

boil_coil_size boil_coil_size_of(const boil_coil *c);

#define BOIL_COIL_COEFFICIENT                                                                                                  \
    454.0 /* W/m2K, 80 Btu/h ft2 F: 50 to 140, judgement, of boiling caustic on a coil with salt on it. Plating
    tanks have 100 still, 150 stirred [R. Leopold, Products Finishing, October 1999, Table III] */

#endif
