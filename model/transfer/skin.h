/* transfer/skin.h -- the skin of an evaporating bath: it is stronger than the bath, and the vapour carries its heat away with it.

   Water evaporates and leaves its salt behind, which diffuses back through a film, or with the liquid that renews the surface:
       s_skin = s_bulk exp[e/(rho k_L)],   k_L = (h_liq/(rho c)) Le^(-1/2),   Le = kappa/D                                (1)
   [film theory and surface renewal: Bird, Stewart & Lightfoot, Transport Phenomena, from memory]. h_liq is the heat transfer
   coefficient of the bath's side, kappa = k/(rho c). D 4e-9 m2/s (2e-9 to 8e-9, judgement: no value was found for 140 degC and
   50 %): k_L 5.6e-5 m/s (3e-5 to 1e-4), with 1500 W/m2K for a bath four times as thick as the hot water that the coefficient of
   transfer/surface.h is fitted to. It lowers what a strong bath evaporates by a quarter to a half, and with it the time that a boil
   is away: so likely and mild runs have it and the grave ones do not (case/closures.h).
   Vapour that streams away takes the convection of the air's side down by Ackermann's factor [1937, from memory]:
       phi/(exp phi - 1),   phi = e c_pv/h_c.                                                                              (2) */
#ifndef BOIL_TRANSFER_SKIN_H
#define BOIL_TRANSFER_SKIN_H

#define BOIL_SKIN_DIFFUSIVITY 4e-9 /* m2/s, of salt in the hot bath */

typedef struct {
    double density_kg_m3, heat_capacity_J_kgK, conductivity_W_mK;
    double salt_diffusivity_m2_s;
} boil_skin_liquid;

double boil_skin_mass_transfer(const boil_skin_liquid *l, double liquid_coefficient_W_m2K); /* k_L of (1), m/s */

/* s_skin of (1), kg salts per kg, for a flux e, kg/m2s, positive away from the bath; with moisture taken up, e < 0, the skin is
   weaker than the bath. Not above 1; the caller holds it at its correlation's end. */
double boil_skin_salt_fraction(double bulk_fraction, double flux_kg_m2s, double density_kg_m3, double mass_transfer_m_s);

/* (2): 1 without flux, less with it, more when moisture is taken up. Coefficient h_c, W/m2K, positive. */
double boil_skin_convection_factor(double flux_kg_m2s, double vapour_heat_capacity_J_kgK, double coefficient_W_m2K);

#endif
