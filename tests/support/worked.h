/* support/worked.h -- a shift that is worked: a scenario is written to the scratch file, read and begun; acts are done. */
#ifndef SUPPORT_WORKED_H
#define SUPPORT_WORKED_H

#include "support/close.h"
#include "support/scratch.h"

#include <stdio.h>
#include <string.h>

#include "practise/shift.h"

#define WORKED_PLANT                                                                                                           \
    "[tank]\nlength = 5 ft\nwidth = 2 ft\ndepth = 24.5 in\nlevel = 16 in\nwall = 3/16 in\ninsulation = 2 in\n"                 \
    "[bath]\nsalts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2\nboiling point = 285 degF\n"                                             \
    "[heat]\nsource = gas\ninput = 190 kBtu/h\nefficiency = 60 %\nlag = 60 s\n"
#define WORKED_TOP "start = 9:00\nduration = 30 min\n"

/* A file's text, what was read of it, and the shift that is worked. */
typedef struct {
    scenario_text text;
    scenario read;
    shift shift;
} worked;

static inline void worked_begin(worked *w, const char *text)
{
    messages m;
    FILE *f = fopen(scratch_path, "w");
    assert_non_null(f);
    fputs(text, f);
    fclose(f);
    messages_init(&m);
    assert_true(scenario_text_read(scratch_path, &w->text, &m));
    assert_int_equal(scenario_of_text(&w->text, NULL, 0, &w->read, &m), BOIL_OK);
    messages_free(&m);
    assert_int_equal(shift_begin(&w->shift, &w->text.text, &w->read), BOIL_OK);
}

static inline void worked_end(worked *w)
{
    shift_free(&w->shift);
    scenario_free(&w->read);
    scenario_text_free(&w->text);
}

static inline boil_outcome worked_act(worked *w, const char *doing)
{
    messages m;
    char words[200];
    const journal_act done = {.doing = words, .planned = strncmp(doing, "every", 5) == 0};
    snprintf(words, sizeof words, "%s", doing);
    messages_init(&m);
    boil_outcome outcome = shift_act(&w->shift, &done, &m);
    messages_free(&m);
    return outcome;
}

#endif
