#include "design/exhaust.h"

#include <math.h>
#include <stddef.h>

#include "base/constants.h"
#include "design/published_units.h"

boil_exhaust_class boil_exhaust_class_of(double bath_K, double below_boil_K)
{
    static const double over_F[] = {200, 150, 94}, within_F[] = {20, 50, 100};
    boil_exhaust_class c = {BOIL_HAZARD_C, 1};
    while (c.number < 4 && bath_K <= BOIL_FAHRENHEIT(over_F[c.number - 1]) && below_boil_K * 1.8 > within_F[c.number - 1])
        c.number++;
    return c;
}

/* Rows of the table of control velocities, by letter and number; the last is general ventilation. */
enum { ROW_FASTEST, ROW_FAST, ROW_MIDDLE, ROW_SLOW, ROW_GENERAL };
static const int rows[][4] = {
    [BOIL_HAZARD_A] = {ROW_FASTEST, ROW_FASTEST, ROW_FAST, ROW_SLOW},
    [BOIL_HAZARD_B] = {ROW_FAST, ROW_FAST, ROW_MIDDLE, ROW_GENERAL},
    [BOIL_HAZARD_C] = {ROW_FAST, ROW_MIDDLE, ROW_SLOW, ROW_GENERAL},
    [BOIL_HAZARD_D] = {ROW_MIDDLE, ROW_SLOW, ROW_GENERAL, ROW_GENERAL},
};

bool boil_exhaust_general_only(boil_exhaust_class c)
{
    return rows[c.letter][c.number - 1] == ROW_GENERAL;
}

double boil_exhaust_control_velocity(boil_exhaust_class c, boil_hood h)
{
    static const double enclosing[] = {100, 75, 65, 50, (double)NAN}, lateral[] = {(double)NAN, 100, 75, 50, (double)NAN};
    int row = rows[c.letter][c.number - 1];
    return (h == BOIL_HOOD_ENCLOSING ? enclosing : lateral)[row] * BOIL_FOOT_A_MINUTE;
}

enum { COLUMNS = 5 };
typedef struct {
    double control;
    double free[COLUMNS], baffled[COLUMNS];
} lateral_row;

static const lateral_row laterals[] = {
    {50, {75, 90, 100, 110, 125}, {50, 60, 75, 90, 100}},
    {75, {110, 130, 150, 170, 190}, {75, 90, 110, 130, 150}},
    {100, {150, 175, 200, 225, 250}, {100, 125, 150, 175, 200}},
};

/* Rounding must not choose the lower column. */
static int column_of(double across)
{
    static const double from[COLUMNS] = {0, 0.1, 0.25, 0.5, 1.0};
    int column = 0;
    while (column + 1 < COLUMNS && across >= from[column + 1] * (1 - 1e-9))
        column++;
    return column;
}

double boil_exhaust_lateral_rate(double control_m_s, double across, bool baffled)
{
    for (size_t i = 0; i < sizeof laterals / sizeof laterals[0]; i++)
        if (fabs(control_m_s / BOIL_FOOT_A_MINUTE - laterals[i].control) < 1e-6 && across <= 2 * (1 + 1e-9))
            return BOIL_FOOT_A_MINUTE * (baffled ? laterals[i].baffled : laterals[i].free)[column_of(across)];
    return (double)NAN;
}

double boil_exhaust_pull_rate(double bath_K)
{
    double degF = bath_K * 1.8 - 459.67;
    return BOIL_FOOT_A_MINUTE * (degF > 150 ? 0.4 * degF + 15 : 75);
}

double boil_exhaust_push(double slot_m)
{
    return 243 * sqrt(slot_m / BOIL_FOOT) * BOIL_FOOT * BOIL_FOOT_A_MINUTE;
}

boil_width_verdict boil_exhaust_width(boil_hood h, double width_m)
{
    const double good_m = 20 * BOIL_INCH, one_m = 36 * BOIL_INCH, two_m = 48 * BOIL_INCH, most = 1 + 1e-9;
    if (h != BOIL_HOOD_ONE_SIDE && h != BOIL_HOOD_TWO_SIDES)
        return BOIL_WIDTH_GOOD;
    if (width_m > two_m * most || (h == BOIL_HOOD_ONE_SIDE && width_m > one_m * most))
        return BOIL_WIDTH_REFUSED;
    return h == BOIL_HOOD_ONE_SIDE && width_m > good_m * most ? BOIL_WIDTH_TWO_BETTER : BOIL_WIDTH_GOOD;
}

static double velocity_pressure(double m_s)
{
    double v = m_s / BOIL_FOOT_A_MINUTE / 4005;
    return v * v * BOIL_INCH_OF_WATER;
}

boil_exhaust_duct boil_exhaust_duct_of(double air_m3_s, double hood_m)
{
    const double fast = 2000 * BOIL_FOOT_A_MINUTE, step = 2 * BOIL_INCH;
    boil_exhaust_duct d;
    d.slot_m = air_m3_s / (fast * hood_m);
    d.plenum_m = 2 * d.slot_m;
    d.duct_m = fmax(step, step * floor(sqrt(4 * air_m3_s / (BOIL_PI * fast)) / step * (1 + 1e-9)));
    d.duct_m_s = air_m3_s / (BOIL_PI / 4 * d.duct_m * d.duct_m);
    d.loss_Pa = 1.78 * velocity_pressure(fast) + 1.25 * velocity_pressure(d.duct_m_s);
    return d;
}
