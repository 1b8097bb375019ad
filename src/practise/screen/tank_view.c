#include "practise/screen/tank_view.h"

#include <math.h>

#define RIGHT (TANK_LEFT + TANK_INSIDE + 1)
#define DEPTH_ROWS (TANK_FLOOR - TANK_RIM)
#define FIRES 6

/* Height over the floor, in rows; above it all lies beyond the picture. */
static double rows_of(const shift *s, double height_m)
{
    return fmin(height_m / s->scenario->plant.tank.depth_m * DEPTH_ROWS, DEPTH_ROWS + TANK_RIM - TANK_TOP);
}

/* The row of the screen in which a height lies. */
static int row_at(double rows)
{
    int row = TANK_FLOOR - 1 - (int)floor(rows);
    return row < TANK_TOP ? TANK_TOP : row;
}

static void vessel(canvas *c, const shift *s, const panel *p, unit_system u)
{
    for (int row = TANK_RIM; row < TANK_FLOOR; row++) {
        canvas_put(c, row, TANK_LEFT, CANVAS_PLAIN, "|");
        canvas_put(c, row, RIGHT, CANVAS_PLAIN, "|");
    }
    canvas_put(c, TANK_FLOOR, TANK_LEFT, CANVAS_PLAIN, "+----------------------------+");
    canvas_put(c, TANK_RIM, TANK_LEFT - 5, CANVAS_PLAIN, "rim =");
    canvas_put(c, TANK_RIM, RIGHT + 1, CANVAS_PLAIN, "= rim");
    double limit = rows_of(s, s->scenario->plant.tank.depth_m - p->limit_m);
    int row = row_at(limit);
    if (p->limit_m > 0 && row > TANK_RIM && row < TANK_FLOOR) {
        canvas_print(c, row, 1, CANVAS_PLAIN, "%6.6s", format_quantity(u, DIM_LENGTH, p->limit_m).text);
        canvas_put(c, row, TANK_LEFT - 1, CANVAS_PLAIN, "-");
        canvas_put(c, row, RIGHT + 1, CANVAS_PLAIN, "- limit");
    }
}

/* The surface, low, middle or high in its row; what floats has a sign of its own. */
static void surface(canvas *c, double level, bool floats, int *top)
{
    double part = level - floor(level);
    char sign = floats ? '~' : part < 1.0 / 3 ? '_' : part < 2.0 / 3 ? '-' : '=';
    char text[2] = {sign, '\0'};
    *top = row_at(level);
    for (int column = TANK_LEFT + 1; column < RIGHT; column++)
        canvas_put(c, *top, column, floats ? CANVAS_BOLD : CANVAS_PLAIN, text);
}

/* Scrambled, and the same for the same arguments: bubbles are scattered, and any odd factors will do. */
static unsigned drawn(unsigned a, unsigned b)
{
    unsigned x = (a * 1597334677u) ^ (b * 3812015801u);
    x ^= x >> 15;
    return x * 741103597u >> 8;
}

static void bubbles(canvas *c, const panel *p, int top, unsigned moment)
{
    int count = (int)(90 * fmin(p->row.void_fraction, 0.6) / 0.6), height = TANK_FLOOR - 1 - top;
    for (int i = 0; i < count && height > 0; i++) {
        unsigned speed = 1 + drawn((unsigned)i, 3) % 2;
        int up = (int)((drawn((unsigned)i, 1) + moment * speed) % (unsigned)height);
        int column = TANK_LEFT + 1 + (int)(drawn((unsigned)i, 2) % TANK_INSIDE);
        canvas_put(c, TANK_FLOOR - 1 - up, column, CANVAS_PLAIN, i % 3 == 0 ? "O" : "o");
    }
}

/* Side by side, hanging from above the rim. */
static void loads(canvas *c, const panel *p)
{
    size_t most = p->loads < 4 ? p->loads : 4;
    for (size_t i = 0; i < most; i++) {
        int column = TANK_LEFT + 3 + (int)i * 7;
        for (int row = TANK_RIM; row < TANK_FLOOR - 2; row++)
            canvas_put(c, row, column, CANVAS_PLAIN, row < TANK_FLOOR - 5 ? "|  |" : "#  #");
    }
}

static void on_the_floor(canvas *c, const panel *p, double bath_kg)
{
    int count = (int)ceil(fmin(p->bed_kg / (0.05 * bath_kg), 1) * TANK_INSIDE);
    for (int i = 0; i < count && p->bed_kg > PANEL_LEAST_KG; i++)
        canvas_put(c, TANK_FLOOR - 1, TANK_LEFT + 1 + i, CANVAS_PLAIN, ":");
}

static void fire(canvas *c, const panel *p)
{
    int count = (int)ceil(FIRES * fmin(p->heat, 1) - 0.05);
    for (int i = 0; i < count; i++)
        canvas_put(c, TANK_FLOOR + 1, TANK_LEFT + 3 + i * 5, CANVAS_PLAIN, "^");
}

/* Over the rim: broken at the upper edge of the picture, down the sides. */
static void spilling(canvas *c, int top)
{
    for (int column = TANK_LEFT - 4; column <= RIGHT + 4 && top <= TANK_TOP; column++)
        canvas_put(c, TANK_TOP, column, CANVAS_BOLD, "^");
    for (int row = TANK_RIM + 1; row < TANK_FLOOR; row += 2) {
        canvas_put(c, row, TANK_LEFT - 2, CANVAS_BOLD, "V");
        canvas_put(c, row, RIGHT + 2, CANVAS_BOLD, "V");
    }
}

void tank_view_draw(canvas *c, const shift *s, const panel *p, unsigned moment, unit_system u)
{
    int top;
    double bath_kg = p->row.water_kg + p->row.naoh_kg + p->row.nano3_kg + p->row.nano2_kg;
    vessel(c, s, p, u);
    double level = rows_of(s, p->row.level_m);
    surface(c, fmax(level, 0), p->row.layer_kg > PANEL_LEAST_KG, &top);
    if (p->row.void_fraction > 0)
        bubbles(c, p, top, moment);
    loads(c, p);
    on_the_floor(c, p, bath_kg);
    fire(c, p);
    if (p->row.freeboard_m <= 0)
        spilling(c, top);
}
