/* scenario/record.h -- a scenario as it was read, in SI: the plant, what is done to it, and the words for reports. Keys and
   uncertain numbers say where in it they go. */
#ifndef SCENARIO_RECORD_H
#define SCENARIO_RECORD_H

#include "design/exhaust.h"
#include "jobs/jobs.h"
#include "jobs/now.h"
#include "lesson/lesson.h"
#include "schedule/schedule.h"

typedef enum {
    SETTING_GIVEN,
    SETTING_DEFAULT, /* its value is in the plant, or `otherwise` of its key says what holds */
    SETTING_ABSENT   /* does not belong to this case: another shape, another way to state the strength or the pressure */
} setting_state;

typedef struct {
    const struct key *key;
    setting_state state;
    char *given;              /* the value as written; NULL when not given */
    size_t line;              /* where; 0 when not given */
    unit_dimension dimension; /* of a number as given: that of the key, or its other one */
} scenario_setting;

typedef enum { FUEL_NATURAL_GAS, FUEL_PROPANE } heat_fuel;

/* Of an SI unit of what settings[].dimension says. NaN: not stated. */
typedef struct {
    double gas, electricity, steam, water, salts, liquid, waste, labour;
    char *currency; /* NULL: not stated */
} scenario_prices;

/* What only the designer's sheet asks: no run minds any of it. NaN: not stated. */
typedef enum { SLOT_ALONG_LENGTH, SLOT_ALONG_WIDTH } slot_along;
typedef enum { DRAFT_ATMOSPHERIC, DRAFT_FAN } burner_draft;

typedef struct {
    boil_hood hood;
    slot_along along; /* of a box: the side that a slot runs along */
    bool baffled;
    double set_back_m;   /* of a slot behind the rim */
    double open_area_m2; /* of an enclosing hood */
    unsigned hazard;     /* 0: as the bath; else 4 letter + number, from A-1 as 1 */
    double winter_K, degree_days_F;
} scenario_exhaust;

typedef struct {
    double margin; /* over the need, as a share */
    burner_draft draft;
    double flue_K, flue_oxygen, casing_loss; /* of the burner; shares */
    double tube_efficiency, element_W_m2;
    double heated_share, peak_flux, floor_m, floor_bars_m, scale_m; /* floor_m NaN: as the walls; no bars: 0 */
    double stress_Pa, corrosion_m;
    double basket_m, spacing_m; /* width of a basket, and between two */
    double water_gauge_Pa, water_K;
    double rinse_ratio;
    double hours_a_year, idle_s;
    double insulation_price, capital_rate; /* of a m3; share a year */
} scenario_design;

/* The acts of a script or choice of a lesson, those of [schedule] among them. */
typedef struct {
    boil_schedule schedule;
    schedule_wording wording;
} scenario_script;

/* What only a plan asks: no run minds any of it. */
typedef struct {
    double hoist_s, settle_s;
    double water_kg_s; /* the most, by hand */
    double end_s;      /* of the shift, from the start; infinity: open */
    double odds;       /* share of the draws of [uncertain] in which it should hold; 0: not asked */
    char *jobs_file;   /* CSV file of the jobs, as written; NULL: none */
} scenario_plan;

typedef struct {
    char *path;            /* as messages show it */
    char *title;           /* default: the file's name without folder and ending */
    char *run_sheet;       /* CSV file of the actions, as written; NULL: none */
    double start_s;        /* wall clock, after midnight */
    moment_count times;    /* how the schedule counts them */
    double altitude_m;     /* NaN: not stated */
    double freeboard_m;    /* at the start, in place of the level; NaN: not stated */
    double turndown;       /* full fire over minimum fire; NaN: not stated */
    double steam_gauge_Pa; /* of a coil's steam, over the room's pressure; NaN: not stated */
    heat_fuel fuel;        /* of a gas burner: for what its flow and its price say */
    scenario_prices prices;
    scenario_exhaust exhaust;
    scenario_design design;
    scenario_plan plan;
    scenario_jobs jobs;
    now_section now; /* as [now] says; a plan alone minds it, and only when asked */
    boil_plant plant;
    boil_schedule schedule; /* actions in order, "every" unrolled */
    schedule_wording wording;
    scenario_setting *settings;  /* one per key of the table, in its order */
    struct uncertain *uncertain; /* as [uncertain] says; the plant has what the file says elsewhere */
    size_t uncertain_count;
    lesson lesson;                               /* as [lesson], [choices] and [must name] say */
    scenario_script scripts[LESSON_SCRIPTS];     /* empty where it is no lesson */
    scenario_script choices[LESSON_CHOICES_MAX]; /* of lesson.choices */
} scenario;

#endif
