/* analysis/findings.h -- what in a run deserves a word, how grave it is, and the quantity behind it. */
#ifndef BOIL_ANALYSIS_FINDINGS_H
#define BOIL_ANALYSIS_FINDINGS_H

#include "analysis/remedies.h"
#include "boilback.h"
#include "simulate/run.h"

/* Signal words as ANSI Z535 defines them. */
typedef enum { BOIL_SEVERITY_NOTICE, BOIL_SEVERITY_CAUTION, BOIL_SEVERITY_WARNING, BOIL_SEVERITY_DANGER } boil_severity;
const char *boil_severity_word(boil_severity s); /* "NOTICE", ... */

typedef enum {
    BOIL_UNIT_TIME,        /* s */
    BOIL_UNIT_LENGTH,      /* m */
    BOIL_UNIT_MASS,        /* kg */
    BOIL_UNIT_MASS_FLOW,   /* kg/s */
    BOIL_UNIT_TEMPERATURE, /* K */
    BOIL_UNIT_DIFFERENCE,  /* K */
    BOIL_UNIT_POWER,       /* W */
    BOIL_UNIT_DENSITY,     /* kg/m3: load per volume */
    BOIL_UNIT_RATIO,       /* 1 */
    BOIL_UNITS
} boil_unit_kind;

extern const char *const boil_unit_words[BOIL_UNITS]; /* "s", ... */

typedef struct {
    const char *id;     /* stable, lower case with hyphens: "boil-lost-long" */
    const char *title;  /* a few words */
    const char *advice; /* one sentence: what to do */
    boil_severity severity;
    double time_s;       /* NaN: holds for the whole run */
    double value, limit; /* limit NaN: none */
    boil_unit_kind unit;
    double needed_W;          /* boil-never-returns, never-boils: smallest heat to the tank that would do; else NaN */
    double needed_kg;         /* liquid-stops-boil: largest addition that would not; salt-too-much: water to
                                restore; crystals: how much falls out; else NaN */
    const char *needed_words; /* what needed_kg is, to be put before it; NULL when there is none */
    size_t count;             /* how often the same thing was found; the gravest, else the first, is shown */
} boil_finding;

typedef struct {
    boil_finding *list; /* gravest first, then by time */
    size_t count, capacity;
} boil_findings;

/* Findings of the central run: likely. In *of_fast those that only the fast run shows, or shows graver: possible. `fast` and
   `of_fast` may be NULL. Nothing is run: what would have been enough is `needed`, of the central run; NULL: unknown.
   BOIL_OK or BOIL_NO_MEMORY. */
boil_outcome boil_findings_of(const boil_plant *p, const boil_schedule *s, const boil_remedies *needed,
                              const boil_history *central, const boil_history *fast, boil_findings *of_central,
                              boil_findings *of_fast);

/* Everything that can be found, one by one: its id, and a few words; NULL beyond the last. */
const char *boil_finding_listed(size_t index, const char **title);

void boil_findings_free(boil_findings *f);
boil_severity boil_findings_gravest(const boil_findings *f); /* BOIL_SEVERITY_NOTICE when empty */

#endif
