/* support/pins.h -- regression pins, tests/published/pins.csv: where the model is known to lie outside of a source's own band, and
   by how much today. What a source says stands in the published tables, what we deviate stands only here. */
#ifndef SUPPORT_PINS_H
#define SUPPORT_PINS_H

#include "support/evidence.h"

typedef struct {
    bool found;
    double low, high;
    char because[300];
} pin;

static inline pin pin_of(const char *table, const char *row)
{
    pin p = {.found = false};
    published *pins = published_open("tests/published/pins.csv");
    while (published_next(pins))
        if (strcmp(published_text(pins, "table"), table) == 0 && strcmp(published_text(pins, "id"), row) == 0) {
            p = (pin){.found = true, .low = published_number(pins, "low"), .high = published_number(pins, "high")};
            snprintf(p.because, sizeof p.because, "%s", published_text(pins, "because"));
        }
    published_close(pins);
    return p;
}

/* The deviation lies in the source's band, low to high; or the row is pinned, and then outside that band and inside its pin. */
static inline void pins_hold(const char *table, const char *row, double deviation, double low, double high)
{
    const pin p = pin_of(table, row);
    const bool inside = deviation >= low && deviation <= high;
    if (!p.found && !inside)
        fail_msg("%s: row %s deviates by %g, allowed %g to %g", table, row, deviation, low, high);
    if (p.found && inside)
        fail_msg("%s: row %s deviates by %g, which its source allows: take its pin out", table, row, deviation);
    if (p.found && !(deviation >= p.low && deviation <= p.high))
        fail_msg("%s: row %s deviates by %g, pinned at %g to %g", table, row, deviation, p.low, p.high);
}

/* The same for the present row of a table by its own band; the deviation as the row's kind measures it. */
static inline void pins_hold_row(const char *table, published *row, double deviation)
{
    const double band = published_number(row, "band");
    pins_hold(table, published_text(row, "id"), deviation, -band, band);
}

#endif
