#include <stdlib.h>

#include "commands/compare/answer.h"
#include "describe/listing.h"
#include "describe/report.h"
#include "describe/verdict.h"

/* clang-format off */
WRITES(verdict_in_si, carried_out, text, verdict_of(r, UNITS_SI).text)
WRITES(stopped, carried_out, bool, carried_out_stopped(r))

static const field side[] = {
    SCENARIO_FIELD, TITLE_FIELD, GIVEN(FIELD_TEXT, "verdict", NULL, verdict_in_si, "the run in one line"),
    GIVEN(FIELD_BOOL, "stopped", NULL, stopped, "it left what is known of the bath, or the tank was full, before its end"), FIELDS_END};
/* clang-format on */

static void side_a(json *j, const char *name, const void *record)
{
    json_record(j, name, side, ((const compare_answer *)record)->a);
}

static void side_b(json *j, const char *name, const void *record)
{
    json_record(j, name, side, ((const compare_answer *)record)->b);
}

typedef struct {
    const char *section, *key;
    setting_words words[2];
    const char *a, *b;
} setting;

typedef struct {
    const char *only_in;
    double time_s;
    action_name name;
    action_text details;
} action;

/* clang-format off */
#define RECORD setting
static const field setting_fields[] = {
    TEXT("section", section, "of the scenario"), TEXT("key", key, "of the setting"),
    TEXT("a", a, "its value in A, in SI units; null: A has no such setting"), TEXT("b", b, "its value in B"),
    FIELDS_END};
#undef RECORD

#define RECORD action
static const field action_fields[] = {
    TEXT("only_in", only_in, "a or b"), SAME(time_s, "when, from the start"),
    CHARS("act", name, "what is done, in the words of the scenario"),
    CHARS("details", details, "what there is to know beyond them, in SI units"), FIELDS_END};
#undef RECORD
/* clang-format on */

static const char *words_of(const scenario *s, size_t i, setting_words *words)
{
    *words = setting_words_of(s, i, UNITS_SI);
    return s->settings[i].state != SETTING_ABSENT ? words->text : NULL;
}

static void settings(json *j, const char *name, const void *record)
{
    const compare_answer *c = record;
    json_list(j, name);
    for (size_t i = 0; i < key_count(); i++) {
        setting s = {.section = key_at(i)->section, .key = key_at(i)->words};
        if (!compare_setting_differs(c, i))
            continue;
        s.a = words_of(c->a->scenario, i, &s.words[0]);
        s.b = words_of(c->b->scenario, i, &s.words[1]);
        json_record(j, NULL, setting_fields, &s);
    }
    json_close(j);
}

static void actions(json *j, const char *name, const void *record)
{
    size_t count;
    compare_action *list = compare_actions(record, &count);
    json_list(j, name);
    for (size_t i = 0; i < count; i++) {
        const compare_action *l = &list[i];
        action a = {l->in_a ? "a" : "b", l->of->schedule.actions[l->action].time_s, action_name_of(l->of, l->action),
                    action_details(l->of, l->action, ACTION_SI)};
        json_record(j, NULL, action_fields, &a);
    }
    json_close(j);
    free(list);
}

typedef struct {
    const char *name, *words;
    double a, b;
} measured;

static measured measure(const compare_answer *c, const compare_measure *m)
{
    return (measured){m->name, m->words, compare_measure_of(m, c->a), compare_measure_of(m, c->b)};
}

/* clang-format off */
#define RECORD measured
#define SIDES SAME(a, "in A; nothing: there is none"), SAME(b, "in B")
static const field measured_fields[] = {SIDES, FIELDS_END};
static const field line_fields[] = {
    TEXT("quantity", name, "which, with its SI unit"), TEXT("meaning", words, "in words"), SIDES, FIELDS_END};
#undef RECORD
/* clang-format on */

static void outcomes(json *j, const char *name, const void *record)
{
    const compare_measure *m;
    json_object(j, name);
    for (size_t i = 0; (m = compare_measured(i)) != NULL; i++) {
        measured x = measure(record, m);
        json_record(j, m->name, measured_fields, &x);
    }
    json_close(j);
}

typedef struct {
    bool there, likely;
    boil_severity severity;
    double time_s, value;
} found;

typedef struct {
    const char *id;
    found in[2];
} finding;

/* clang-format off */
TELLS(bool, is_there, found, r->there)

#define RECORD found
static const field found_fields[] = {
    WORD("severity", severity, document_severities, "signal word"),
    BOOL("likely", likely, "found in the likely run; else only in others of the set, or graver there: possible"),
    SAME(time_s, "when; null: it holds for the whole run"), SAME(value, "what was found, in SI"), FIELDS_END};
#undef RECORD

#define RECORD finding
static const field finding_fields[] = {
    TEXT("id", id, "a name that stays"), OBJECT_IF("a", in[0], found_fields, is_there, "in A; null: not found"),
    OBJECT_IF("b", in[1], found_fields, is_there, "in B; null: not found"), FIELDS_END};
/* clang-format on */

static found found_in(const compare_finding *f, int i)
{
    const boil_finding *g = f->in[i];
    return g != NULL ? (found){true, f->likely[i], g->severity, g->time_s, g->value} : (found){.there = false};
}

static void findings(json *j, const char *name, const void *record)
{
    size_t count;
    compare_finding *list = compare_findings(record, &count);
    json_list(j, name);
    for (size_t i = 0; i < count; i++) {
        finding f = {compare_finding_of(&list[i])->id, {found_in(&list[i], 0), found_in(&list[i], 1)}};
        json_record(j, NULL, finding_fields, &f);
    }
    json_close(j);
    free(list);
}

/* clang-format off */
static const field answer[] = {
    VERSION_FIELD, GIVEN(FIELD_OBJECT, "a", side, side_a, "the first scenario"),
    GIVEN(FIELD_OBJECT, "b", side, side_b, "the second"),
    GIVEN(FIELD_LIST, "settings", setting_fields, settings, "settings that differ"),
    GIVEN(FIELD_LIST, "acts", action_fields, actions, "what is done in one of them only"),
    GIVEN(FIELD_MAP, "outcome", measured_fields, outcomes, "what comes of it, by quantity: slowest_load_s, level_max_m, ..."),
    GIVEN(FIELD_LIST, "findings", finding_fields, findings, "findings of either, gravest first"), FIELDS_END};

const document compare_documents[] = {
    {"--json", "both side by side", answer, false}, {"--csv", "what comes of it, a quantity a line", line_fields, true}, {0}};
/* clang-format on */

void compare_csv(const void *of, FILE *to)
{
    const compare_measure *m;
    csv_header(to, line_fields);
    for (size_t i = 0; (m = compare_measured(i)) != NULL; i++) {
        measured x = measure(of, m);
        csv_record(to, line_fields, &x);
    }
}
