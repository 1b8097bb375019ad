/* design/walls.h -- the plates of a rectangular tank under its brimful liquid: not a vessel design. SI units.

   Wall with all four edges held, the rim as stiff as the others:

       stress = beta g L^2 H/t^2,    bulge = alpha g H L^4/(E t^3),    g = rho x gravity, L the side, H floor to rim    (1)

   [Megyesy, Pressure Vessel Handbook, after Vojtaszak, J. Appl. Mech. 3 (1936): formula and three pairs as worksheets give
   them, the others of beta and alpha from memory, and within 2 % of a plate solution.] Rim: the held edge carries p_max H/6 a
   length; so that it moves by no more than L/500 between pinned corners I = 5 w L^4/(384 E L/500). Without such a rim the same
   wall bulges some ten times as far: a thickness means nothing without it. Over 30 ft3 that handbook wants a frame.

   Floor, edges simply supported: stress = beta q b^2/t^2, sag = alpha q b^4/(E t^3), b the shorter side. [Roark's Formulas,
   Table 11.4, case 1a]

   All are to be asked at the worn thickness. Not in them: supports, a hot floor over a burner, thermal stress, earthquakes, the
   hoist. */
#ifndef BOIL_DESIGN_WALLS_H
#define BOIL_DESIGN_WALLS_H

#define BOIL_STEEL_STRESS 94.46e6   /* Pa, 13 700 psi: allowable, carbon steel, judgement; the code's value is the designer's */
#define BOIL_STEEL_MODULUS 193.05e9 /* Pa, 28e6 psi, at a bath's temperature */
#define BOIL_CORROSION 1.5875e-3    /* m, 1/16 in: allowance, judgement */
#define BOIL_BASKET_SPACING 0.0762  /* m, 3 in between baskets; practice, judgement */
#define BOIL_WALL_BULGE_MOST (1.0 / 500) /* of its side */
#define BOIL_UNFRAMED_MOST 0.849505      /* m3, 30 ft3 */

typedef struct {
    double stress_Pa, bulge_m;
} boil_plate_strain;

/* H/L to 2: NaN beyond. */
boil_plate_strain boil_wall_strain(double side_m, double depth_m, double density_kg_m3, double thickness_m);
boil_plate_strain boil_floor_strain(double long_m, double short_m, double pressure_Pa, double thickness_m);

/* Thinnest plate, m, in steps of 1/16 in, that worn by the allowance stays below the stress and within L/500. NaN: none to 2
   in. */
double boil_wall_order(double side_m, double depth_m, double density_kg_m3, double stress_Pa, double corrosion_m);
/* Likewise of a panel of the floor: below the stress, and sagging by no more than its shorter side/200, judgement. */
double boil_floor_order(double long_m, double short_m, double pressure_Pa, double stress_Pa, double corrosion_m);

double boil_rim_load(double depth_m, double density_kg_m3); /* N/m */
double boil_rim_inertia(double side_m, double load_N_m);    /* m4, each side */

#endif
