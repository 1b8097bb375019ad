/* scenario/draft.h -- a scenario while its file is being read, for the files that read it, in this order: lines.c (which line
   stands for what), read.c (values of settings), needs.c (what must stand there, what must not), settle.c, problems.c, acts.c
   with lesson.c, uncertain_lines.c. */
#ifndef SCENARIO_DRAFT_H
#define SCENARIO_DRAFT_H

#include "scenario/scenario.h"

#define DRAFT_SECTIONS_MAX 32

/* Lines that are no settings, by what they say: those of a section each, the last a lesson's scripts; and its 'pass', which stands
   among settings. */
typedef enum {
    DRAFT_ACTS,
    DRAFT_UNCERTAIN,
    DRAFT_BREAKS,
    DRAFT_MEASURES,
    DRAFT_JOBS,
    DRAFT_NOW,
    DRAFT_ANSWERS,
    DRAFT_NAMES,
    DRAFT_SCRIPTS,
    DRAFT_PASSES = DRAFT_SCRIPTS + LESSON_SCRIPTS,
    DRAFT_KINDS
} draft_kind;

typedef struct {
    size_t *list; /* their numbers */
    size_t count, capacity;
} draft_lines;

/* What is known of a file while it is being read. */
typedef struct {
    messages *messages;
    scenario *out;
    source *text, *sheet, *jobs;
    bool sheet_anywhere;
    const scenario_change *changes;
    size_t change_count;
    setting_line *found;                     /* one per key */
    bool *meant;                             /* per key: a misspelt one was taken for it */
    cursor volume;                           /* a line that says how much is in the tank; at NULL: there is none */
    size_t section_line[DRAFT_SECTIONS_MAX]; /* 0: not there */
    draft_lines lines[DRAFT_KINDS];
} draft;

/* Sections that more than one of these files names. */
#define DRAFT_SCHEDULE "schedule"
#define DRAFT_LESSON "lesson"
#define DRAFT_CHOICES "choices"

/* draft.c. Its place among key_sections(); -1: it is none. */
int draft_section(const char *section);
size_t draft_section_line(const draft *d, const char *section); /* of its header; 0: not there */
bool draft_has(const draft *d, const char *section);
/* Of a key that is in the table: as found, and as it is told. */
const setting_line *draft_line(const draft *d, const char *section, const char *words);
scenario_setting *draft_setting(draft *d, const char *section, const char *words);
/* Steps to the next line of a kind, *next being how many were read; false behind the last, or where no more messages are
   taken. */
bool draft_next_line(const draft *d, draft_kind kind, size_t *next, cursor *c);
/* Complains about something that is not there: at its section, or at the end of the file. */
void draft_missing(const draft *d, const char *section, const char *what);
/* What is wrong with a section, or with a setting that stands in the file or was put in its place; NULL: nothing. */
void draft_report(draft *d, const char *section, const char *problem);
void draft_report_setting(draft *d, const char *section, const char *words, const char *problem);

bool draft_is_table(const draft *d); /* table.c: no scenario but a sheet that one may name; says so */
void draft_read_lines(draft *d);     /* lines.c */
void draft_check_needs(draft *d);    /* needs.c */
void draft_settle(draft *d);         /* settle.c: what several keys share, or what is no field of the plant */
void draft_ask_model(draft *d);      /* problems.c: what the model will not take */
scenario scenario_usual(void);       /* usual.c: before the file is read */

/* acts.c. Jobs, breaks, measures and acts; `path` of the scenario, which run sheet and list of jobs lie beside. */
void draft_read_actions(draft *d, const char *path);
void draft_read_lesson(draft *d, const schedule_draft *common); /* lesson.c: once [schedule] is read, before it is finished */
void draft_read_uncertain(draft *d);                            /* uncertain_lines.c */

#endif
