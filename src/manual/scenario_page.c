/* scenario_page.c -- boilback-scenario(5): the language of scenarios, from the tables it is read by. */
#include <string.h>

#include "actions/action.h"
#include "actions/load_shape.h"
#include "base/program.h"
#include "manual/key_text.h"
#include "manual/pages.h"
#include "scenario/uncertain.h"

/* A whole scenario, as short as one can be that does something. */
static const char example[] = "title    = Two baskets an hour\n"
                              "start    = 6:00\n"
                              "duration = 4 h\n"
                              "\n"
                              "[tank]\n"
                              "length = 72 in\n"
                              "width  = 36 in\n"
                              "depth  = 30 in      # floor to rim\n"
                              "level  = 20 in      # still surface above the floor\n"
                              "\n"
                              "[bath]\n"
                              "salts         = 80 % NaOH, 15 % NaNO3, 5 % NaNO2\n"
                              "boiling point = 285 degF\n"
                              "\n"
                              "[heat]\n"
                              "input = 330 kBtu/h\n"
                              "\n"
                              "[schedule]\n"
                              "0:05  load 80 lb, plate 1/4 in, at 90 degF, for 20 min, basket 15 lb\n"
                              "0:10  water 8 gal over 16 min\n"
                              "every 30 min from 0:35 to 3:35  load 80 lb, bar 3/4 in, for 20 min\n";

static void form_of_files(FILE *to)
{
    roff_section(to, "DESCRIPTION");
    roff_text(to, "A scenario is a text file in UTF-8, at most 1 MiB long, in two halves: what stands there, as "
                  "settings, and what is done by the clock, as acts. One line holds one thing; blank lines are passed "
                  "over.");
    fputc('\n', to);
    roff_paragraph(to, "A setting is a key, an equals sign and a value. Some settings stand above the first section, "
                       "the others below the header of theirs, such as '[tank]'. A key stands once. Sections may come "
                       "in any order, each once. Case and the number of blanks do not count in keys and words; they "
                       "do in units.");
    roff_paragraph(to, "A '#' at the start of a line or after a blank begins a comment, except in a title.");
    roff_paragraph(to, "Every mistake in a file is reported, with its place and, where one is near, the word that "
                       "would be right.");
}

static void value_term(FILE *to, const char *form, const char *text)
{
    roff_term(to);
    roff_form(to, form);
    fputc('\n', to);
    roff_text(to, text);
    fputc('\n', to);
}

static void values(FILE *to)
{
    roff_section(to, "VALUES");
    value_term(to, "QUANTITY",
               "A number and its unit, such as '24 in' or '1.5 h'. The number may be a fraction: '1/4 in', '1 1/4 in'. "
               "It has a decimal point, never a comma, and may have a power of ten: '3e5 W'. The unit is never left "
               "out. LENGTH, MASS, TIME, TEMPERATURE and so on below are quantities; UNITS lists what each may be "
               "written in.");
    value_term(to, "PERCENTAGE", "A number and '%'.");
    value_term(to, "NUMBER", "A bare number, without a unit.");
    value_term(to, "CLOCK",
               "Hours, minutes and, if need be, seconds: '6:00', '0:05:30'. In the schedule it counts from the start; "
               "only 'start' is a time of day.");
    value_term(to, "SALT",
               "NaOH, NaNO3 or NaNO2, or 'sodium hydroxide', 'sodium nitrate' or 'sodium nitrite'. The shares of a "
               "blend add up to 100 %.");
    value_term(to, "NAME", "The name of a load: the rest of its clause.");
}

/* Settings -------------------------------------------------------------------------------------------------------- */

/* "Bounds 1 to 2." where there is something to say. */
static void remark(FILE *to, const char *before, const char *text)
{
    if (text[0] == '\0')
        return;
    roff_text(to, before);
    if (before[0] == '\0')
        roff_sentence(to, text);
    else {
        roff_text(to, text);
        fputs(".\n", to);
    }
}

static void setting(FILE *to, const key *k, const defaults *d)
{
    roff_term(to);
    fputs("\\fB", to);
    roff_text(to, k->words);
    fputs("\\fR = ", to);
    roff_form(to, key_form(k).text);
    fputc('\n', to);
    roff_sentence(to, k->meaning);
    remark(to, "", key_needed(k).text);
    remark(to, "From ", key_bounds(k).text);
    remark(to, "Default: ", defaults_of(d, k).text);
}

static void section_settings(FILE *to, const char *section, const defaults *d)
{
    for (size_t i = 0; i < key_count(); i++)
        if (strcmp(key_at(i)->section, section) == 0)
            setting(to, key_at(i), d);
}

static bool has_settings(const char *section)
{
    for (size_t i = 0; i < key_count(); i++)
        if (strcmp(key_at(i)->section, section) == 0)
            return true;
    return false;
}

static void settings(FILE *to, const defaults *d)
{
    const char *const *sections = key_sections();
    roff_section(to, "SETTINGS");
    roff_subsection(to, "Above the first section");
    section_settings(to, "", d);
    for (size_t i = 0; sections[i] != NULL; i++) {
        if (!has_settings(sections[i]))
            continue;
        fprintf(to, ".SS [%s]\n", sections[i]);
        section_settings(to, sections[i], d);
    }
}

/* Actions ------------------------------------------------------------------------------------------------------------ */

static void timing(FILE *to)
{
    roff_section(to, "ACTS");
    roff_text(to, "A line of the section [schedule] says when, and then what is done:");
    fputc('\n', to);
    value_term(to, "WHEN ACT", "Once. WHEN is a clock or a time with its unit, counted from the start.");
    value_term(to, "every TIME [from WHEN] [to WHEN] ACT",
               "Again and again, both ends included; from the start and to the end of the shift unless it says so. "
               "Without 'to', a duration must be set.");
    roff_paragraph(to, "The acts may stand in a run sheet instead: a CSV file with the header 'time,act', named by "
                       "the setting 'schedule' above the first section.");
}

static void verbs(FILE *to)
{
    const action_type *d;
    roff_subsection(to, "What is done");
    for (size_t i = 0; (d = action_type_listed(i)) != NULL; i++) {
        roff_term(to);
        fprintf(to, "\\fB%s\\fR ", d->keyword);
        roff_form(to, d->form);
        fputc('\n', to);
        roff_sentence(to, d->meaning);
    }
}

static void shapes(FILE *to)
{
    const load_shape *s;
    roff_subsection(to, "Shapes of a load");
    for (size_t i = 0; (s = load_shape_listed(i)) != NULL; i++) {
        roff_term(to);
        fprintf(to, "\\fB%s\\fR \\fILENGTH\\fR\n", s->words);
        roff_sentence(to, s->size);
    }
}

static void clauses(FILE *to)
{
    roff_subsection(to, "Clauses of a load");
    value_term(to, "as NAME", "Names the load, so that 'lift NAME' can take it out.");
    for (size_t i = 0; i < action_load.clause_count; i++) {
        const action_clause *c = &action_load.clauses[i];
        roff_term(to);
        fprintf(to, "\\fB%s\\fR ", c->words);
        roff_form(to, key_dimension_form(c->dimension).text);
        fputc('\n', to);
        roff_sentence(to, c->meaning);
        remark(to, "From ", key_range_text(c->dimension, &c->within).text);
    }
}

/* Uncertain numbers ----------------------------------------------------------------------------------------------- */

static void constants(FILE *to)
{
    const uncertain_thing *t;
    roff_subsection(to, "Constants of the model that may be uncertain");
    for (size_t i = 0; (t = uncertain_constant(i)) != NULL; i++) {
        roff_term(to);
        fputs("\\fB", to);
        roff_text(to, t->words);
        fputs("\\fR\n", to);
        roff_sentence(to, t->meaning);
        remark(to, "From ", key_range_text(t->dimension, &t->within).text);
    }
}

static void uncertain_numbers(FILE *to)
{
    roff_section(to, "UNCERTAIN NUMBERS");
    roff_text(to, "A line of the section [uncertain] names a setting of one number and says how well it is known, for");
    fputs("\n.BR " PROGRAM_NAME "\\-explore (1);\n", to);
    roff_text(to, "the other commands take the settings as they stand. A setting is named by the words of its section, then "
                  "its own: 'heat efficiency'. At most 20 lines, each within the bounds of its setting.");
    fputc('\n', to);
    value_term(to, "NAME = VALUE to VALUE", "Anything between is as likely: 'heat efficiency = 50 % to 70 %'.");
    value_term(to, "NAME = VALUE to VALUE, likely VALUE",
               "Less likely towards both ends: 'losses evaporation factor = 0.75 to 1.25, likely 1'.");
    value_term(to, "NAME = VALUE +- VALUE",
               "Normal, with one standard deviation, cut off at three: 'bath boiling point = 285 degF +- 1 degF'.");
    value_term(to, "NAME = VALUE | VALUE | ...", "Each of up to 16 as likely: 'mixing time factor = 0.34 | 1 | 3'.");
    constants(to);
}

/* Units ----------------------------------------------------------------------------------------------------------- */

/* "in (inch, inches)" */
static void spellings(FILE *to, const unit *u)
{
    roff_text(to, u->spellings[0]);
    for (size_t i = 1; i < UNIT_SPELLINGS && u->spellings[i] != NULL; i++) {
        fputs(i == 1 ? " (" : ", ", to);
        roff_text(to, u->spellings[i]);
    }
    if (UNIT_SPELLINGS > 1 && u->spellings[1] != NULL)
        fputc(')', to);
}

static void units_of(FILE *to, unit_dimension d)
{
    const unit *u;
    unit_dimension over, under;
    roff_term(to);
    roff_form(to, key_dimension_form(d).text);
    fputc('\n', to);
    for (size_t i = 0; (u = unit_listed(d, i)) != NULL; i++) {
        fputs(i > 0 ? ";\n" : "", to);
        spellings(to, u);
    }
    fputs(".\n", to);
    if (!unit_quotient(d, &over, &under))
        return;
    fputs("Also ", to);
    roff_form(to, key_dimension_form(over).text);
    fputs(" \\fBper\\fR ", to);
    roff_form(to, key_dimension_form(under).text);
    fputs(".\n", to);
}

static void units(FILE *to)
{
    roff_section(to, "UNITS");
    roff_text(to, "Spellings in brackets mean the same. gal is the US gallon. The degree sign reads as 'deg', a raised "
                  "2 or 3 as its digit.");
    fputc('\n', to);
    for (unsigned d = 0; d < DIM_COUNT; d++)
        units_of(to, (unit_dimension)d);
}

void page_scenario(FILE *to)
{
    defaults d;
    if (!defaults_read(&d))
        return;
    roff_title(to, PROGRAM_NAME "-scenario", 5);
    roff_section(to, "NAME");
    fputs(PROGRAM_NAME "\\-scenario \\- a tank of boiling caustic salt solution and what is done with it\n", to);
    form_of_files(to);
    values(to);
    settings(to, &d);
    defaults_free(&d);
    timing(to);
    verbs(to);
    shapes(to);
    clauses(to);
    uncertain_numbers(to);
    units(to);
    roff_section(to, "EXAMPLE");
    roff_example(to, example);
    roff_section(to, "SEE ALSO");
    fputs(".BR " PROGRAM_NAME " (1),\n.BR " PROGRAM_NAME "\\-check (1),\n.BR " PROGRAM_NAME "\\-explore (1)\n", to);
}
