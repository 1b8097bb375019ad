/* describe/listing.h -- a scenario laid open: every setting in both unit systems, defaults marked, the charge worked out, the
   actions one by one. */
#ifndef DESCRIBE_LISTING_H
#define DESCRIBE_LISTING_H

#include "base/format.h"
#include "base/text.h"
#include "scenario/scenario.h"

#define PLAN_ACTIONS_MAX ((size_t)40)
#define PLAN_CHARGE_MAX 18

typedef struct {
    const char *name;
    unit_dimension dimension;
    double si;
    const char *note;
} listing_row;

/* What the charge comes to: strength, boiling point, volume, masses, heat. */
typedef struct {
    listing_row rows[PLAN_CHARGE_MAX];
    size_t count;
} listing_charge;
listing_charge listing_charge_of(const scenario *s);

void listing_print(const scenario *s, FILE *to);

/* Two columns, US and SI, behind a name; a note that has no room behind them stands below. */
void listing_both(FILE *to, const char *name, const char *us, const char *si, const char *note);
void listing_one(FILE *to, const char *name, const char *value, const char *note); /* the same in both */
void listing_line(FILE *to, const char *name, unit_dimension d, double si, const char *note);

/* A setting's value in words, as what it means and not as it was written. */

typedef TEXT_OF(600) setting_words;

/* "0.25 in", "280.0 to 295.0 degF", "80 % NaOH, 15 % NaNO3, 5 % NaNO2", "gas", "left to the model". */
setting_words setting_words_of(const scenario *s, size_t index, unit_system system);

#endif
