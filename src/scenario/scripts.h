/* scenario/scripts.h -- the scripts and choices of a lesson: acts of their own beside those of [schedule], each a schedule of its
   own. */
#ifndef SCENARIO_SCRIPTS_H
#define SCENARIO_SCRIPTS_H

#include "scenario/record.h"

/* What every script is read with. */
typedef struct {
    const schedule_draft *common; /* the draft of [schedule], before it was finished: plant, clock, breaks, measures */
    const source *text;           /* of the scenario */
    const size_t *lines;          /* of [schedule] in it */
    size_t lines_count;
    const source *sheet; /* run sheet in place of them; without bytes: none */
    bool common_good;    /* [schedule] was read without a mistake */
    messages *messages;
} script_reader;

/* Lines of a section. */
typedef struct {
    const char *section;
    size_t header; /* its own line; 0: it is not there */
    const size_t *lines;
    size_t lines_count;
} script_section;

/* A script: [schedule]'s acts, which are not complained about again, and those of a section. To be freed whatever comes of it. */
void script_read(const script_reader *r, const script_section *s, scenario_script *out);

/* [choices]: "at MOMENT ask QUESTION", then a few "choice ANSWER = ACT; ACT". */
void script_choices_read(const script_reader *r, const script_section *s, scenario *out);

void script_free(scenario_script *s);

#endif
