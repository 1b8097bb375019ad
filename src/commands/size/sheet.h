/* commands/size/sheet.h -- the designer's sheet: what to order for a scenario, row by row, each with where it comes from. What runs say stands
   in sheet_facts; the rows are closed forms of it (model/design). An order is rounded up, and a missing input said and never guessed. */
#ifndef COMMANDS_SIZE_SHEET_H
#define COMMANDS_SIZE_SHEET_H

#include "commands/size/answer.h"

typedef struct {
    double end_K;    /* of the bath as the heat comes on again */
    double reheat_s; /* from then to the boil, with the design heat; NaN: not within six hours */
} sheet_idle;

/* Heats that water is made up at. */
typedef enum { SHEET_HOLD, SHEET_NEED, SHEET_DESIGN, SHEET_HEATS } sheet_heat_of;

typedef struct {
    const size_answer *size;
    const scenario *scenario;
    boil_plant plant;                     /* as the scenario has it, but with the hood's draught where that is more */
    double need_W, hood_need_W, design_W; /* hood_need_W NaN: no hood, or none whose velocity is known */
    bool hood_beyond;                     /* with the hood's draught no heat does */
    double control_m_s;                   /* of the hood; NaN likewise */
    double heat_up_s;                     /* from the room to the boil; NaN: it never boils, or cannot stand cold */
    double calm_W[2], hold_W[2];          /* lid off, on; hold_W NaN: none was found */
    double water_K;                       /* of what is made up */
    double makeup_kg_s[SHEET_HEATS];      /* lid off */
    double vapour_kg_s;                   /* boiled and evaporated with the design heat */
    double rim_m;                         /* least, that leaves the freeboard wanted with the design heat, by all laws */
    double bed_K;                         /* most that a bed of salt lay hotter than the bath; NaN: none */
    double drag_out_kg_s, drag_out_salts_kg_s, steel_W, steel_kg_s; /* mean over the schedule; NaN: no loads in it */
    sheet_idle idle[2];                                             /* lid off, on */
    double density_kg_m3, latent_J_kg, vapour_kg_m3, boiling_K;
} sheet_facts;

typedef enum {
    SHEET_RUN,
    SHEET_TABLE,
    SHEET_UNREAD,
    SHEET_FORMULA,
    SHEET_REMEMBERED,
    SHEET_PRACTICE,
    SHEET_YOURS
} sheet_origin;

/* What a row is. */
typedef enum { SHEET_VALUE, SHEET_MISSING, SHEET_REMARK, SHEET_WARNING, SHEET_NOTICE } sheet_kind;

/* In which units values are shown. */
typedef enum {
    SHEET_HEAT,
    SHEET_FLUX,
    SHEET_TEMPERATURE,
    SHEET_DIFFERENCE,
    SHEET_LENGTH,
    SHEET_SHORT,
    SHEET_AREA,
    SHEET_VOLUME,
    SHEET_MASS,
    SHEET_AIR,
    SHEET_GAS,
    SHEET_SPEED,
    SHEET_DRAUGHT_LOSS,
    SHEET_TRICKLE,
    SHEET_FLOW,
    SHEET_STEAM,
    SHEET_HOUR,
    SHEET_ENERGY,
    SHEET_YEAR,
    SHEET_LINE_LOAD,
    SHEET_INERTIA,
    SHEET_STRESS,
    SHEET_GAUGE,
    SHEET_RATIO,
    SHEET_NUMBER,
    SHEET_COUNT,
    SHEET_SHARE,
    SHEET_UNITS
} sheet_unit;

enum { SHEET_VALUES = 3, SHEET_ROWS = 128 };

typedef struct {
    sheet_kind kind;
    const char *group;
    char name[80];
    sheet_unit unit;
    double values[SHEET_VALUES]; /* SI */
    size_t count;
    sheet_origin from;
    bool assumed; /* rests on a default or on judgement */
    bool doubted; /* a warning stands on it */
    char words[320];
} sheet_row;

typedef struct {
    sheet_facts facts;
    const char *group; /* of the rows to come */
    sheet_row rows[SHEET_ROWS];
    size_t rows_count;
} sheet;

/* What the runs say: BOIL_OK, or a failure. */
int sheet_facts_of(const size_answer *a, sheet_facts *out);

/* BOIL_OK, or a failure. Without a heat that does there are no rows. */
int sheet_of(const size_answer *a, sheet *out);

/* The rows of a group, added to the sheet. */
void sheet_heat(sheet *s);
void sheet_burner(sheet *s);
void sheet_floor(sheet *s);
void sheet_heaters(sheet *s);
void sheet_exhaust(sheet *s);
void sheet_water(sheet *s);
void sheet_standby(sheet *s);
void sheet_tank(sheet *s);
void sheet_year(sheet *s);

/* One row each; `values` end where `count` says. The name, or the words, as by printf. */
sheet_row *sheet_add(sheet *s, sheet_unit u, sheet_origin from, const char *name, ...) __attribute__((format(printf, 4, 5)));
void sheet_put(sheet_row *r, double value);
void sheet_say(sheet *s, sheet_kind kind, const char *words, ...) __attribute__((format(printf, 3, 4)));
void sheet_missing(sheet *s, const char *name,
                   const char *words); /* "not asked: give [exhaust] hood"; else why there is none */
bool sheet_given(const sheet *s, const char *section, const char *words);

formatted_text sheet_shown(const sheet_row *r, unit_system system); /* "120 / 7.9 kBtu/h" */

boil_exhaust_class sheet_class(const scenario *s, double boiling_K); /* as the bath's, or as wished */
double sheet_fuel_share(const sheet *s); /* of the fuel or current that reaches the bath: as stated, or less by the flue gas */
double sheet_air_m3_s(const sheet *s);   /* of the hood; NaN: none, or none that the tables know */
double sheet_slot_m(const sheet *s);     /* length of all its slots together */

void sheet_report(const void *answer, const output *o, FILE *to);
extern const field sheet_fields[];

#endif
