/* validate/water.c -- water and steam. */
#include "validate/validate.h"

#include "support/steam.h"

/* Rows W024, W030, W036 are SR1-86's vapour pressure, which the model does not offer; IF97's agrees to their printed digits. Of SR1-86's
   dp/dT (W029, W035) the model shows what its enthalpies contain. */
validate_list validate_water(void)
{
    static const validate_quantity quantities[] = {
        {"water and steam", NULL, "{quantity}, {temperature_K} K, {pressure_Pa} Pa", NULL, steam_row_model, NULL},
    };
    static const validate_table tables[] = {{"tests/published/water_steam.csv", quantities, 1}};
    return (validate_list){tables, 1};
}
