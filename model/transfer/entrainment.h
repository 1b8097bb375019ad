/* transfer/entrainment.h -- water of a floating layer that a load takes with it into the bath, while it is lowered through it.

       m = rho_w [1.3 A sqrt(nu d/U) + C_d V],   at most the layer                                                        (1)
   First what clings to a wetted area A as it passes a layer of depth d at speed U (boundary layer of the Blasius kind; constant
   judgement), then the water that a body of volume V carries along, its drift volume [Darwin, Proc. Camb. Phil. Soc. 49 (1953)
   342, from memory: for a body in a boundless liquid C_d is its coefficient of added mass]. C_d 0.2 central, 0 low, all of the
   layer high: judgement; no measurement was found of plates (for particles the wake volume: Verso, van Reeuwijk & Liberzon,
   arXiv 1810.09513). What is carried down slowly is not all mixed: at 0.03 m/s the work of drag, 0.009 J for 0.8 m2, could spread
   a hundredth of it, the rest floats up again. */
#ifndef BOIL_TRANSFER_ENTRAINMENT_H
#define BOIL_TRANSFER_ENTRAINMENT_H

#define BOIL_ENTRAINMENT_DRIFT 0.2 /* C_d, central */

typedef struct {
    double wetted_m2, displaced_m3; /* of load and basket */
    double speed_m_s;               /* of lowering, 0.01 to 1; not lowered: none is taken */
    double layer_m, layer_kg;       /* depth and mass of the water */
    double water_kg_m3, viscosity_m2_s;
} boil_entrainment_passage;

double boil_entrainment_clinging(const boil_entrainment_passage *p);                  /* kg, first term of (1), not limited */
double boil_entrainment(const boil_entrainment_passage *p, double drift_coefficient); /* kg, (1) */

#endif
