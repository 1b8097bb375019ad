/* lesson/lesson.h -- a lesson: a question about a shift, what has to hold at its end, and whether it did.

   A scenario becomes one by its section [lesson]. Its acts in [schedule] are done in any case; [careful], [reckless] and [idle] are
   scripts, each with acts beside those: careful passes, the other two do not. Without scripts its [schedule] is judged. Everything is judged from a run's own extremes, never
   from its rows, which miss a surge of some seconds. */
#ifndef LESSON_LESSON_H
#define LESSON_LESSON_H

#include "boilback.h"
#include "base/format.h"
#include "reading/quantity.h"

#define LESSON_TERMS_MAX 8
#define LESSON_STOPS_MAX 2
#define LESSON_CHOICES_MAX 4
#define LESSON_NAMES_MAX 8

typedef enum { LESSON_CAREFUL, LESSON_RECKLESS, LESSON_IDLE, LESSON_SCRIPTS } lesson_script;
extern const char *const lesson_script_words[LESSON_SCRIPTS + 1]; /* "careful", ..., NULL: also their sections */

/* What a term may ask for. */
typedef struct {
    const char *words;                                        /* "afloat quiet", as a lesson writes it */
    const char *meaning;                                      /* one line, no full stop */
    const char *title;                                        /* for a debrief: "most water afloat on a quiet bath" */
    unit_dimension dimension;                                 /* of a bare number DIM_COUNT, of a share DIM_FRACTION */
    bool holds;                                               /* it holds or not, 1 or 0, and stands alone: "boils" */
    double (*of)(const boil_plant *p, const boil_history *h); /* in SI; infinite: without bound, as a boil that never is back */
    bool (*more_than)(const boil_plant *p, const boil_history *h); /* that or more: no law holds so far up; NULL: never so */
} lesson_measure;

/* What a history says of a measure. */
typedef struct {
    double si;      /* as lesson_measure.of */
    bool more_than; /* that or more */
} lesson_value;

lesson_value lesson_measured(const lesson_measure *m, const boil_plant *p, const boil_history *h);

const lesson_measure *lesson_measure_listed(size_t index); /* in the order of the manual; NULL beyond the last */

const lesson_measure *lesson_measure_named(const char *words, size_t length); /* NULL: none is */

/* "rim >= 6 in", "boils at = 281 degF to 291 degF", "quiet = 0", "boils". It holds where low <= value <= high. */
typedef struct {
    const lesson_measure *measure;
    size_t line;                       /* of the file */
    double low, high;                  /* SI; infinite where there is no such limit */
    words_quote low_words, high_words; /* as written, "" likewise */
} lesson_term;

/* At most LESSON_STOPS_MAX moments at which a replay stops and asks. */
typedef struct {
    double at_s; /* from the start; before any act of its choices */
    char *asks;
} lesson_stop;

/* An answer, whose acts stand in the scenario (scenario.choices): beside those of [schedule] they are a run of its own. */
typedef struct {
    size_t stop;
    char *says;
} lesson_choice;

typedef struct {
    bool given;            /* the scenario is one; else all is empty */
    bool scripted;         /* it has scripts; a shift that was worked on one, and saved, has its acts in [schedule] and none */
    char *goal, *question; /* never NULL in a lesson; the others are where they are not stated */
    char *hint, *debrief, *care;         /* a line each: after the first failure; after any; done with care */
    lesson_term terms[LESSON_TERMS_MAX]; /* all have to hold; one at least */
    size_t terms_count;
    lesson_stop stops[LESSON_STOPS_MAX]; /* in order of time */
    size_t stops_count;
    lesson_choice choices[LESSON_CHOICES_MAX]; /* in the order of the file: by their stops */
    size_t choices_count;
    const char *must_name[LESSON_NAMES_MAX]; /* ids that must be among the findings of the reckless run, likely or possible */
    size_t must_name_count;
} lesson;

void lesson_free(lesson *l); /* an empty one is fine */

/* One term, "MEASURE >= QUANTITY", to the end of the cursor, added to the lesson. False, with a message, when it is none, or there are
   too many. */
bool lesson_term_read(cursor *c, lesson *l);

/* Ids of findings, one or more with commas between. False, with a message, when one is none, or there are too many. */
bool lesson_names_read(cursor *c, lesson *l);

/* How a history answers the terms. */
typedef struct {
    lesson_value value[LESSON_TERMS_MAX]; /* of each term's measure */
    bool holds[LESSON_TERMS_MAX];         /* what is that or more is under no limit */
    size_t failed;                        /* terms that do not hold */
    size_t waited;                        /* acts of the schedule that were waited for in vain: any of them fails the whole */
    bool stopped;                         /* the run ended early: what came then is not known, and fails the whole */
    bool passed;
} lesson_verdict;

lesson_verdict lesson_judge(const lesson *l, const boil_plant *p, const boil_history *h);

/* A value, and its limit as the lesson has it: "7.1 in", "more than 30.2", "at least 6 in". */
typedef TEXT_OF(120) lesson_text;
lesson_text lesson_value_text(const lesson_term *t, lesson_value value, unit_system system);
lesson_text lesson_times_text(lesson_value times); /* "6.2", "more than 30": never a digit that no law holds for */
lesson_text lesson_limit_text(const lesson_term *t);

/* Whether a finding of that id is in a list. */
bool lesson_names(const boil_findings *f, const char *id);

#endif
