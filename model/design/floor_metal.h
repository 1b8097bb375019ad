/* design/floor_metal.h -- how hot the metal is that heats the bath, from the heat that goes through it. SI units.

       T_inner = T_bath + dT_head + q/h + q R,    T_outer = T_inner + q s/k,                                        (1)
       dT_head = R_gas T^2/(L M p) rho g H,       the boil deep down is that much hotter (Clausius-Clapeyron),      (2)
       h = f 55 pr^0.12 (-log10 pr)^-0.55 M^-0.5 q^0.67, pool boiling of water on metal of 1 um roughness           (3)
       [Cooper, Adv. Heat Transfer 16 (1984) 157, from memory], M in g/mol; f 0.5 for strong caustic, 0.2 to 0.9, judgement:
       no measurement at 50 % was found,
       q_c = C L sqrt(rho_v) [sigma g (rho_l - rho_v)]^(1/4), the flux at which boiling gives way to a film of steam; C 0.131
       [Zuber 1959, from memory].                                                                                   (4)

   Salt or scale of thickness s resists with s/0.8 W/mK, the bed's own conductivity elsewhere in the model (0.6 to 1.0,
   judgement). Range: horizontal steel, boiling, 5 to 100 kW/m2; a clean floor's superheat is good to x/1.7. */
#ifndef BOIL_DESIGN_FLOOR_METAL_H
#define BOIL_DESIGN_FLOOR_METAL_H

#define BOIL_FLOOR_PEAK 2.0         /* peak over mean flux under a burner: 1.3 to 3, judgement; of tubes and elements 1 */
#define BOIL_FLOOR_PEAK_MOST 37.9e3 /* W/m2, judgement: 12 kBtu/h ft2, as near 25 W/in2 as an element is refused at */
#define BOIL_FLOOR_METAL_MOST 616.5 /* K, judgement: 650 degF, to which steel's allowable stress is level (from memory) */

typedef struct {
    double flux_W_m2;   /* through the metal, 0 or more */
    double bath_K;      /* at the surface */
    double head_K;      /* (2) */
    double pressure_Pa; /* of the room */
    double scale_m;     /* of salt or scale */
    double steel_m;     /* thickness of the plate */
} boil_floor;

typedef struct {
    double inner_K, outer_K;
} boil_floor_faces;

boil_floor_faces boil_floor_faces_of(const boil_floor *f);

double boil_floor_coefficient(double pressure_Pa, double flux_W_m2); /* (3), W/m2K; 0 without flux */

/* What of (2) and (4) the liquid says. latent: heat to boil a kilogram of water out of the bath. */
typedef struct {
    double temperature_K, pressure_Pa, density_kg_m3, vapour_kg_m3, latent_J_kg, surface_tension_N_m;
} boil_floor_liquid;

double boil_floor_head_rise(const boil_floor_liquid *l, double depth_m); /* K */
double boil_floor_critical_flux(const boil_floor_liquid *l);             /* W/m2 */

double boil_floor_per_metre_of_scale(double flux_W_m2); /* K/m that each thickness of salt adds */

#endif
