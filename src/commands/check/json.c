#include <math.h>

#include "commands/check/output.h"
#include "describe/listing.h"
#include "describe/remarks.h"
#include "describe/report.h"

static const char *const states[] = {[SETTING_GIVEN] = "stated", [SETTING_DEFAULT] = "default", [SETTING_ABSENT] = NULL};

typedef struct {
    const char *section, *key, *unit, *as_written;
    double values[SETTING_VALUES];
    size_t count; /* of values */
    setting_words words;
    setting_state state;
    size_t line;
} setting;

typedef struct {
    double time_s;
    const char *keyword;
    action_name name;
    action_text details;
} action;

/* clang-format off */
#define RECORD setting
#define SETTING_NAME TEXT("section", section, "of the scenario"), TEXT("key", key, "of the setting")
#define SETTING_REST \
    TEXT("unit", unit, "SI unit of its numbers; nothing: they are ratios, or it has none"), \
    CHARS("words", words, "what it means, in SI units"), \
    TEXT("as_written", as_written, "its value in the file; nothing: not stated"), \
    WORD("state", state, states, "whether it is stated or its default holds"), \
    COUNT("line", line, "of the file; 0: not stated")
static const field setting_fields[] = {
    SETTING_NAME, NUMBERS("values", values, count, "in SI: one, two for a range, three for a blend; none for words"),
    SETTING_REST, FIELDS_END};

static const field setting_line_fields[] = {
    SETTING_NAME, NUMBER("value", values[0], "in SI; empty: it is words"),
    NUMBER("value_2", values[1], "high end of a range, second share of a blend"),
    NUMBER("value_3", values[2], "third share of a blend"), SETTING_REST, FIELDS_END};
#undef RECORD

#define RECORD action
static const field action_fields[] = {
    SAME(time_s, "when, from the start"), TEXT("kind", keyword, "its keyword in the scenario: load, lift, water, ..."),
    CHARS("act", name, "what is done, in the words of the scenario"),
    CHARS("details", details, "what there is to know beyond them, in SI units"), FIELDS_END};
#undef RECORD

typedef struct {
    const char *what, *unit, *note;
    double value;
} charge_line;

#define RECORD remark
static const field remark_fields[] = {CHARS("says", text, "what will not do what it seems to ask for"), FIELDS_END};
#undef RECORD

#define RECORD charge_line
static const field charge_fields[] = {
    TEXT("what", what, "a quantity of the bath as it starts"), SAME(value, "in SI"),
    TEXT("unit", unit, "its SI unit; null: a ratio"), TEXT("note", note, "what to know of it"), FIELDS_END};
#undef RECORD
/* clang-format on */

/* False where the setting does not belong to this case. */
static bool setting_of(const scenario *s, size_t i, setting *out)
{
    const scenario_setting *from = &s->settings[i];
    const key *k = from->key;
    *out =
        (setting){.section = k->section, .key = k->words, .as_written = from->given, .state = from->state, .line = from->line};
    out->count = k->choices == NULL ? scenario_setting_value(s, i, out->values) : 0;
    for (size_t n = out->count; n < SETTING_VALUES; n++)
        out->values[n] = (double)NAN;
    out->unit = out->count > 0 ? unit_si(k->dimension) : NULL;
    out->words = setting_words_of(s, i, UNITS_SI);
    return from->state != SETTING_ABSENT;
}

static void settings(json *j, const char *name, const void *record)
{
    setting s;
    json_list(j, name);
    for (size_t i = 0; i < key_count(); i++)
        if (setting_of(record, i, &s))
            json_record(j, NULL, setting_fields, &s);
    json_close(j);
}

static void charge(json *j, const char *name, const void *record)
{
    listing_charge c = listing_charge_of(record);
    json_list(j, name);
    for (size_t i = 0; i < c.count; i++) {
        const listing_row *r = &c.rows[i];
        json_record(j, NULL, charge_fields, &(charge_line){r->name, unit_si(r->dimension), r->note, r->si});
    }
    json_close(j);
}

static void actions(json *j, const char *name, const void *record)
{
    const scenario *s = record;
    json_list(j, name);
    for (size_t i = 0; i < s->schedule.count; i++) {
        action a = {s->schedule.actions[i].time_s, action_type_of(s->schedule.actions[i].kind)->keyword, action_name_of(s, i),
                    action_details(s, i, ACTION_SI)};
        json_record(j, NULL, action_fields, &a);
    }
    json_close(j);
}

static void remarks_list(json *j, const char *name, const void *record)
{
    remarks r = remarks_of(record);
    json_list(j, name);
    for (size_t i = 0; i < r.count; i++)
        json_record(j, NULL, remark_fields, &r.list[i]);
    json_close(j);
}

typedef struct {
    const char *script, *measure;
    double value, low, high;
    bool more_than, holds;
} term;

/* clang-format off */
#define RECORD proof_script
static const field script_fields[] = {
    BOOL("passes", likely.passed, "every term holds in the likely run, nothing is waited for in vain, and it reaches its end"),
    BOOL("as_wanted", as_wanted, "careful passes, reckless and idle do not; of a schedule true"),
    COUNT("others", others, "other runs of the set that reach the same end"),
    COUNT("others_that_pass", passed, "how many of them pass"), FIELDS_END};
#undef RECORD

#define RECORD term
static const field term_fields[] = {
    TEXT("script", script, "careful, reckless or idle; of one without scripts schedule"), TEXT("measure", measure, "what is asked for"),
    SAME(value, "of the likely run, in SI; null: without bound, as of a boil that is not back"),
    BOOL("more_than", more_than, "it was that or more: no law holds so far above what lifts the bath to the rim"),
    SAME(low, "it has to be that at least; null: no such limit"), SAME(high, "and that at most; null likewise"),
    BOOL("holds", holds, "whether it is"), FIELDS_END};
#undef RECORD
/* clang-format on */

/* By its scripts, or of one without by its schedule; NULL behind the last. */
static const proof_script *judged(const checked *c, size_t i, const char **script)
{
    const lesson *l = &c->scenario.lesson;
    if (!l->given || i >= (l->scripted ? (size_t)LESSON_SCRIPTS : 1))
        return NULL;
    *script = l->scripted ? lesson_script_words[i] : "schedule";
    return l->scripted ? &c->proof.script[i] : &c->proof.own;
}

static void scripts(json *j, const char *name, const void *record)
{
    const char *script = NULL;
    const proof_script *of;
    json_object(j, name);
    for (size_t i = 0; (of = judged(record, i, &script)) != NULL; i++)
        json_record(j, script, script_fields, of);
    json_close(j);
}

static void terms(json *j, const char *name, const void *record)
{
    const checked *c = record;
    const lesson *l = &c->scenario.lesson;
    const char *script = NULL;
    const proof_script *of;
    json_list(j, name);
    for (size_t i = 0; (of = judged(c, i, &script)) != NULL; i++)
        for (size_t k = 0; k < l->terms_count; k++) {
            const lesson_term *asked = &l->terms[k];
            lesson_value value = of->likely.value[k];
            term t = {script, asked->measure->words, value.si, asked->low, asked->high, value.more_than, of->likely.holds[k]};
            json_record(j, NULL, term_fields, &t);
        }
    json_close(j);
}

/* clang-format off */
#define RECORD uncertain
static const field uncertain_fields[] = {
    CHARS("name", thing.words, "the setting, or the law's number"),
    CHARS("spread", as_written, "how it varies, as written"), FIELDS_END};
#undef RECORD

#define RECORD scenario
static const field scenario_fields[] = {
    VERSION_FIELD, TEXT("scenario", path, "the file, as it was named"), TEXT("title", title, "title of the scenario"),
    SAME(start_s, "time of day at which it starts, from midnight"),
    NUMBER("duration_s", schedule.duration_s, "how long it goes on"),
    GIVEN(FIELD_LIST, "settings", setting_fields, settings, "every setting that belongs to this case"),
    GIVEN(FIELD_LIST, "charge", charge_fields, charge, "what that comes to"),
    GIVEN(FIELD_LIST, "acts", action_fields, actions, "what is done, one by one"),
    GIVEN(FIELD_LIST, "remarks", remark_fields, remarks_list, "what is no mistake, but worth a second look"),
    LIST("uncertain", uncertain, uncertain_count, uncertain_fields, "what is not known well"),
    GIVEN(FIELD_MAP, "lesson", script_fields, scripts, "of a lesson: what becomes of each script"),
    GIVEN(FIELD_LIST, "lesson_terms", term_fields, terms, "and of each term in it"), FIELDS_END};
/* clang-format on */

const document check_documents[] = {{"--json", "the scenario laid open", scenario_fields, false},
                                    {"--csv", "its settings, one a line", setting_line_fields, true},
                                    {0}};

void check_csv(const void *answer, FILE *to)
{
    setting line;
    csv_header(to, setting_line_fields);
    for (size_t i = 0; i < key_count(); i++)
        if (setting_of(answer, i, &line))
            csv_record(to, setting_line_fields, &line);
}
