/* scenario_page.c -- boilback-scenario(5): scenario.md, with what the tables say that the language is read by. */
#include <string.h>

#include "actions/load_carried.h"
#include "actions/load_shape.h"
#include "actions/load_stay.h"
#include "habits/table.h"
#include "manual/key_text.h"
#include "manual/pages.h"

/* "Bounds 1 to 2." where there is something to say. */
static void remark(FILE *to, const char *before, const char *text)
{
    if (text[0] == '\0')
        return;
    roff_text(to, before);
    if (before[0] == '\0')
        roff_sentence(to, text);
    else
        roff_between(to, "", text, ".\n");
}

static void setting(FILE *to, const key *k, const defaults *d)
{
    roff_between(to, ".TP\n\\fB", k->words, "\\fR = ");
    roff_form(to, key_form(k).text);
    fputc('\n', to);
    roff_sentence(to, k->meaning);
    remark(to, "", key_needed(k).text);
    remark(to, "From ", key_bounds(k).text);
    remark(to, "Default: ", defaults_of(d, k).text);
}

static void section_settings(FILE *to, const char *section, const defaults *d)
{
    bool begun = false;
    for (size_t i = 0; i < key_count(); i++) {
        if (strcmp(key_at(i)->section, section) != 0)
            continue;
        if (!begun)
            fprintf(to, section[0] != '\0' ? ".SS [%s]\n" : ".SS Above the first section%s\n", section);
        begun = true;
        setting(to, key_at(i), d);
    }
}

static void settings(FILE *to, const void *about)
{
    const char *const *sections = key_sections();
    section_settings(to, "", about);
    for (size_t i = 0; sections[i] != NULL; i++)
        section_settings(to, sections[i], about);
}

static void acts(FILE *to, const void *about)
{
    (void)about;
    const action_type *d;
    for (size_t i = 0; (d = action_type_listed(i)) != NULL; i++) {
        fprintf(to, ".TP\n\\fB%s\\fR ", d->keyword);
        roff_form(to, d->form);
        fputc('\n', to);
        roff_sentence(to, d->meaning);
    }
}

static void shapes(FILE *to, const void *about)
{
    (void)about;
    const load_shape *s;
    for (size_t i = 0; (s = load_shape_listed(i)) != NULL; i++) {
        fprintf(to, ".TP\n\\fB%s\\fR \\fILENGTH\\fR\n", s->words);
        roff_sentence(to, s->size);
    }
}

static void clauses(FILE *to, const void *about)
{
    (void)about;
    for (size_t i = 0; i < action_load.clause_count; i++) {
        const action_clause *c = &action_load.clauses[i];
        fprintf(to, ".TP\n\\fB%s\\fR ", c->words);
        roff_form(to, key_dimension_form(c->dimension).text);
        fputc('\n', to);
        roff_sentence(to, c->meaning);
        remark(to, "From ", key_range_text(c->dimension, &c->within).text);
    }
}

static void stays(FILE *to, const void *about)
{
    (void)about;
    load_stay_clause c;
    for (size_t i = 0; (c = load_stay_listed(i)).form != NULL; i++) {
        roff_term(to, c.form);
        roff_sentence(to, c.meaning);
    }
}

/* What a job may say beyond a load. */
static void jobs(FILE *to, const void *about)
{
    (void)about;
    job_clause c;
    for (size_t i = 0; (c = job_clause_listed(i)).form != NULL; i++) {
        roff_term(to, c.form);
        roff_sentence(to, c.meaning);
    }
}

static void now(FILE *to, const void *about)
{
    (void)about;
    now_line l;
    for (size_t i = 0; (l = now_line_listed(i)).form != NULL; i++) {
        roff_term(to, l.form);
        roff_sentence(to, l.meaning);
    }
}

static void columns(FILE *to, const void *about)
{
    (void)about;
    job_column c;
    for (size_t i = 0; (c = job_column_listed(i)).name != NULL; i++) {
        char form[80];
        snprintf(form, sizeof form, "%s%s%s%s", c.name, c.unit != NULL ? " [" : "", c.unit != NULL ? c.unit : "",
                 c.unit != NULL ? "]" : "");
        roff_term(to, form);
        roff_sentence(to, c.meaning);
        if (c.needed)
            remark(to, "", "required");
    }
}

static void carried(FILE *to, const void *about)
{
    (void)about;
    load_carried_clause c;
    for (size_t i = 0; (c = load_carried_listed(i)).form != NULL; i++) {
        roff_term(to, c.form);
        roff_sentence(to, c.meaning);
    }
}

static void words_of(FILE *to, unsigned place, const char *where)
{
    const char *typed, *read;
    unsigned at;
    roff_term(to, where);
    bool begun = false;
    for (size_t i = 0; habit_listed(i, &typed, &read, &at); i++) {
        if ((at & place) == 0 || read[0] == '\0')
            continue;
        fputs(begun ? ";\n" : "Read ", to);
        roff_between(to, "\\fB", typed, "\\fR");
        roff_between(to, " as ", read, "");
        begun = true;
    }
    fputs(".\n", to);
}

static void other_words(FILE *to, const void *about)
{
    (void)about;
    words_of(to, HABIT_WHEN, "when");
    words_of(to, HABIT_ACT, "what is done");
    words_of(to, HABIT_LOAD, "in a load, before a size");
    words_of(to, HABIT_POUR, "in what is poured");
    words_of(to, HABIT_VALUE, "in a setting");
}

static void constants(FILE *to, const void *about)
{
    (void)about;
    const uncertain_thing *t;
    for (size_t i = 0; (t = uncertain_constant(i)) != NULL; i++) {
        roff_between(to, ".TP\n\\fB", t->words, "\\fR\n");
        roff_sentence(to, t->meaning);
        remark(to, "From ", key_range_text(t->dimension, &t->within).text);
    }
}

static void measures(FILE *to, const void *about)
{
    (void)about;
    const lesson_measure *m;
    for (size_t i = 0; (m = lesson_measure_listed(i)) != NULL; i++) {
        roff_between(to, ".TP\n\\fB", m->words, "\\fR ");
        if (!m->holds)
            roff_form(to, m->dimension == DIM_COUNT      ? "NUMBER"
                          : m->dimension == DIM_FRACTION ? "PERCENTAGE"
                                                         : key_dimension_form(m->dimension).text);
        fputc('\n', to);
        roff_sentence(to, m->meaning);
    }
}

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
    roff_term(to, key_dimension_form(d).text);
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

static void units(FILE *to, const void *about)
{
    (void)about;
    for (unsigned d = 0; d < DIM_COUNT; d++)
        units_of(to, (unit_dimension)d);
}

void page_scenario(FILE *to)
{
    static const text_part parts[] = {{"settings", settings}, {"acts", acts},
                                      {"shapes", shapes},     {"clauses", clauses},
                                      {"stays", stays},       {"jobs", jobs},
                                      {"columns", columns},   {"now", now},
                                      {"carried", carried},   {"measures", measures},
                                      {"words", other_words}, {"constants", constants},
                                      {"units", units},       {0}};
    static const text_page page = {"scenario", 5, "a tank of boiling caustic salt solution and what is done with it", parts};
    defaults d;
    if (!defaults_read(&d))
        return;
    page_of_text(to, &page, &d);
    defaults_free(&d);
}
