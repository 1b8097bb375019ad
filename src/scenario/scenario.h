/* scenario/scenario.h -- a scenario file read, checked and turned into SI. */
#ifndef SCENARIO_SCENARIO_H
#define SCENARIO_SCENARIO_H

#include "scenario/record.h"
#include "scenario/uncertain.h"

/* Reads a scenario file ("-": standard input) and its run sheet. BOIL_OK, or BOIL_BAD_INPUT with everything that is
   wrong in `m`, sorted by place, or BOIL_NO_MEMORY, when what is in `m` may be wrong. `out` must be freed either way; it
   is complete only after BOIL_OK. */
boil_outcome scenario_read(const char *path, scenario *out, messages *m);
bool scenario_names_salts(const scenario *s); /* a bath of plain water need not */

/* What to write where no salts are named and some are asked for. */
#define SCENARIO_SALTS_SUCH_AS "'salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2'"

/* Of a key that is in the table; and whether a thing has a value in this scenario, as a constant always has. */
const scenario_setting *scenario_setting_of(const scenario *s, const char *section, const char *words);
bool scenario_has(const scenario *s, const uncertain_thing *t);
void scenario_free(scenario *s);

/* The same with the acts of a script or choice in place of its own: it holds what s holds, and is not to be freed. */
scenario scenario_with(const scenario *s, const scenario_script *with);

/* The text of a scenario and of its run sheet, kept to be read again with other numbers in it. */
typedef struct {
    const char *path;         /* the caller's */
    source text, sheet, jobs; /* the sheet and the list of jobs are read with the first scenario of this text */
    bool sheet_anywhere;      /* they may lie elsewhere than in the scenario's folder, or below it */
} scenario_text;

typedef struct {
    const uncertain_thing *thing;
    double si;
} scenario_change;

/* False, with messages, when it cannot be read. To be freed either way. */
bool scenario_text_read(const char *path, scenario_text *t, messages *m);
void scenario_text_free(scenario_text *t);

/* As scenario_read, with these numbers in place of the file's: everything that follows from them (pressures, temperatures
   left to the room, charge) follows. From the second time on the text does not change: threads may share it. */
boil_outcome scenario_of_text(scenario_text *t, const scenario_change *changes, size_t count, scenario *out, messages *m);

#define SETTING_VALUES 3

/* The SI values of a setting, given or default, in the dimension of its key: one, two for a range, BOIL_SALTS for a blend;
   the index for a choice. Returns how many: 0 for texts, and where no value is in the plant (see key.otherwise, .state). */
size_t scenario_setting_value(const scenario *s, size_t index, double value[SETTING_VALUES]);

/* A setting as found: where its key stands, and its value. */
typedef struct {
    bool found, good; /* good: its value was read without a mistake */
    const char *key_at;
    cursor value; /* without comment and outer blanks */
} setting_line;

/* Reads one setting into the scenario's field. False, with a message, when the value is wrong; the field is then unchanged. */
bool setting_read(const key *k, const setting_line *line, scenario *out);

/* An action of a scenario in words: as the person planned it, and what there is to know beyond. */

typedef TEXT_OF(128) action_name;

/* "load 100 lb of 1/4 in plate"; the keyword alone when no words were kept. */
action_name action_name_of(const scenario *s, size_t action);
const char *action_name_of_load(const action_name *n); /* "100 lb of 1/4 in plate"; others whole */

/* "8:00 to 8:15"; what it is called stands in its words. */
action_name scenario_break_time(const scenario *s, size_t index);

action_view action_view_of(const scenario *s, size_t action, action_units units);

/* "at 70.0 degF, out at 9:20, basket 7.00 lb"; nothing for actions that say all by themselves. */
action_text action_details(const scenario *s, size_t action, action_units units);

#endif
