#include "scenario/draft.h"

#include <math.h>

#include "analysis/pour_rate.h"
#include "design/combustion.h"
#include "design/floor_metal.h"
#include "design/heaters.h"
#include "design/makeup.h"
#include "design/walls.h"

static scenario_prices no_prices(void)
{
    const double none = (double)NAN;
    return (scenario_prices){none, none, none, none, none, none, none, none, NULL};
}

/* A minute for a basket, and for the boil to settle: judgement. As much water as half a garden hose gives. */
static scenario_plan usual_plan(void)
{
    return (scenario_plan){.hoist_s = 60, .settle_s = 60, .water_kg_s = BOIL_POUR_RATE_WATER_KG_S, .end_s = HUGE_VAL};
}

/* What a designer who says nothing is taken to wish. */
static scenario_exhaust no_hood(void)
{
    const double none = (double)NAN;
    return (scenario_exhaust){.open_area_m2 = none, .winter_K = none, .degree_days_F = none};
}

static scenario_design usual_design(void)
{
    const double none = (double)NAN;
    return (scenario_design){.margin = 0.15,
                             .flue_K = none,
                             .flue_oxygen = none,
                             .casing_loss = BOIL_COMBUSTION_CASING_LOSS,
                             .tube_efficiency = BOIL_TUBE_EFFICIENCY,
                             .element_W_m2 = BOIL_ELEMENT_FLUX,
                             .heated_share = 1,
                             .peak_flux = BOIL_FLOOR_PEAK,
                             .floor_m = none,
                             .stress_Pa = BOIL_STEEL_STRESS,
                             .corrosion_m = BOIL_CORROSION,
                             .basket_m = none,
                             .spacing_m = BOIL_BASKET_SPACING,
                             .water_gauge_Pa = BOIL_MAKEUP_PRESSURE,
                             .water_K = none,
                             .rinse_ratio = 1000,
                             .hours_a_year = none,
                             .idle_s = 14 * 3600,
                             .insulation_price = none,
                             .capital_rate = 0.15};
}

scenario scenario_usual(void)
{
    return (scenario){.plant = boil_plant_default(),
                      .altitude_m = (double)NAN,
                      .freeboard_m = (double)NAN,
                      .turndown = (double)NAN,
                      .steam_gauge_Pa = (double)NAN,
                      .prices = no_prices(),
                      .exhaust = no_hood(),
                      .design = usual_design(),
                      .plan = usual_plan()};
}
