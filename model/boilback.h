/* boilback.h -- an open tank of boiling caustic salt solution, and what happens to its boil when steel, water, salt or heat
   goes in or out. SI units: kg, m, s, K, Pa, W, J; kg/kg for fractions by mass. */
#ifndef BOILBACK_H
#define BOILBACK_H

#ifdef __cplusplus
extern "C" {
#endif

#if defined __GNUC__
#define BOIL_PUBLIC __attribute__((visibility("default")))
#else
#define BOIL_PUBLIC
#endif

/* Version ------------------------------------------------------------------------------------------------------------ */

#define BOIL_VERSION_MAJOR 0
#define BOIL_VERSION_MINOR 2
#define BOIL_VERSION_PATCH 0
#define BOIL_VERSION_TEXT "0.2.0"
#define BOIL_VERSION_NUMBER (10000 * BOIL_VERSION_MAJOR + 100 * BOIL_VERSION_MINOR + BOIL_VERSION_PATCH)

/* Of the library that runs; the macros are of the header that was compiled. */
BOIL_PUBLIC const char *boil_version(void);
BOIL_PUBLIC int boil_version_number(void);

/* Outcomes ----------------------------------------------------------------------------------------------------------- */

/* What a function returns that may fail. It never ends the process (but see boil_least_squares_run). */
typedef enum {
    BOIL_OK = 0,
    BOIL_OUT_OF_RANGE = -1, /* beyond a correlation's range */
    BOIL_NO_ROOT = -2,      /* a solver found no answer */
    BOIL_NO_MEMORY = -3,    /* allocation refused */
    BOIL_BAD_INPUT = -4,    /* the case itself makes no sense */
    BOIL_NOT_FINITE = -5    /* a rate came out infinite or not a number */
} boil_outcome;

BOIL_PUBLIC const char *boil_outcome_text(boil_outcome outcome); /* static text, a few words; of any number */

#ifdef __cplusplus
}
#endif

#endif
