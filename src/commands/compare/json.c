#include "commands/compare/output.h"

#include <stdlib.h>

#include "base/json.h"
#include "base/program.h"
#include "describe/setting_words.h"
#include "describe/verdict.h"
#include "scenario/action_words.h"

static void side(json *j, const char *name, const outcome *o)
{
    json_object(j, name);
    json_text(j, "scenario", o->scenario->path);
    json_text(j, "title", o->scenario->title);
    json_text(j, "verdict", verdict_of(o, UNITS_SI).text);
    json_bool(j, "stopped", outcome_stopped(o));
    json_close(j);
}

static void setting_side(json *j, const char *name, const scenario *s, size_t i)
{
    bool there = s->settings[i].state != SETTING_ABSENT;
    json_text(j, name, there ? setting_words_of(s, i, UNITS_SI).text : NULL);
}

static void settings(json *j, const compare_answer *c)
{
    json_list(j, "settings");
    for (size_t i = 0; i < key_count(); i++) {
        if (!compare_setting_differs(c, i))
            continue;
        json_object(j, NULL);
        json_text(j, "section", key_at(i)->section);
        json_text(j, "key", key_at(i)->words);
        setting_side(j, "a", c->a->scenario, i);
        setting_side(j, "b", c->b->scenario, i);
        json_close(j);
    }
    json_close(j);
}

static void actions(json *j, const compare_answer *c)
{
    size_t count;
    compare_action *list = compare_actions(c, &count);
    json_list(j, "acts");
    for (size_t i = 0; i < count; i++) {
        json_object(j, NULL);
        json_text(j, "only_in", list[i].in_a ? "a" : "b");
        json_number(j, "time_s", list[i].of->schedule.actions[list[i].action].time_s);
        json_text(j, "act", action_name_of(list[i].of, list[i].action).text);
        json_text(j, "details", action_details(list[i].of, list[i].action, ACTION_SI).text);
        json_close(j);
    }
    json_close(j);
    free(list);
}

static void outcomes(json *j, const compare_answer *c)
{
    const compare_measure *m;
    json_object(j, "outcome");
    for (size_t i = 0; (m = compare_measured(i)) != NULL; i++) {
        double a = m->of(c->a), b = m->of(c->b);
        json_object(j, m->name);
        json_number(j, "a", a);
        json_number(j, "b", b);
        json_close(j);
    }
    json_close(j);
}

static void finding_side(json *j, const char *name, const compare_finding *f, int i)
{
    if (f->in[i] == NULL) {
        json_null(j, name);
        return;
    }
    json_object(j, name);
    json_text(j, "severity", boil_severity_word(f->in[i]->severity));
    json_bool(j, "likely", f->likely[i]);
    json_number(j, "time_s", f->in[i]->time_s);
    json_number(j, "value", f->in[i]->value);
    json_close(j);
}

static void findings(json *j, const compare_answer *c)
{
    size_t count;
    compare_finding *list = compare_findings(c, &count);
    json_list(j, "findings");
    for (size_t i = 0; i < count; i++) {
        json_object(j, NULL);
        json_text(j, "id", compare_finding_of(&list[i])->id);
        finding_side(j, "a", &list[i], 0);
        finding_side(j, "b", &list[i], 1);
        json_close(j);
    }
    json_close(j);
    free(list);
}

void compare_json(const compare_answer *c, FILE *to)
{
    json j = json_to(to);
    json_object(&j, NULL);
    json_text(&j, "version", PROGRAM_VERSION);
    side(&j, "a", c->a);
    side(&j, "b", c->b);
    settings(&j, c);
    actions(&j, c);
    outcomes(&j, c);
    findings(&j, c);
    json_close(&j);
}
