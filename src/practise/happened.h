/* practise/happened.h -- what happens as the clock goes on, a line each: the boil lost and back, pours and loads that end, water that
   floats, the rim, and what is found. */
#ifndef PRACTISE_HAPPENED_H
#define PRACTISE_HAPPENED_H

#include "case/grading.h"
#include "practise/shift.h"

typedef TEXT_OF(300) happening_text;

typedef struct {
    double time_s;
    bool finding;
    boil_severity severity; /* of a finding */
    const char *advice;     /* of a finding, static; else NULL */
    happening_text text;
} happening;

typedef struct {
    happening *list; /* in the order of time */
    size_t count, capacity;
} happenings;

void happenings_free(happenings *h);
bool happened_add(happenings *h, double time_s, const char *words); /* by its time; false when memory is refused */

/* How grave each finding was when it was last told, plus one; 0: it was not. */
typedef struct {
    int told[BOIL_FOUND_KINDS];
} happened_findings;

/* All that happens after `from_s`, until now, behind what is in the list. False when memory is refused. */
bool happened_since(const shift *s, double from_s, unit_system u, happenings *out);

/* Until when the clock goes on before it is looked at what was found: the next change at most, and before that a minute or a twentieth
   of the time until then (judgement: a minute is seen to pass, and a look costs more the longer a shift is). */
double happened_next_look_s(const shift *s);

/* What is found of the shift so far, and was not yet, or less grave; likewise. What can only be said of a shift that is over is left
   to its end. */
bool happened_found(const shift *s, double from_s, happened_findings *f, happenings *out);

#endif
