/* design/published_units.h -- what the units are in which the tables of this folder were published, in SI. Rates per area have
   a velocity's unit: a cubic foot a minute through a square foot is a foot a minute. */
#ifndef BOIL_DESIGN_PUBLISHED_UNITS_H
#define BOIL_DESIGN_PUBLISHED_UNITS_H

#define BOIL_FOOT 0.3048                                      /* m, exact */
#define BOIL_INCH 0.0254                                      /* m, exact */
#define BOIL_FOOT_A_MINUTE (BOIL_FOOT / 60)                   /* m/s */
#define BOIL_BTU 1055.05585262                                /* J, of the International Table */
#define BOIL_KBTU_H (1000 * BOIL_BTU / 3600)                  /* W */
#define BOIL_PSI 6894.757293168                               /* Pa */
#define BOIL_WATT_A_SQUARE_INCH (1 / (BOIL_INCH * BOIL_INCH)) /* W/m2 */
#define BOIL_INCH_OF_WATER 249.08891                          /* Pa, at 4 degC */
#define BOIL_GALLON_A_MINUTE (3.785411784e-3 / 60)            /* m3/s, US */
#define BOIL_FAHRENHEIT(degrees) (((degrees) + 459.67) / 1.8) /* K */

#endif
