#include "scenario/scenario.h"

#include <stdlib.h>

#include "scenario/scripts.h"

const scenario_setting *scenario_setting_of(const scenario *s, const char *section, const char *words)
{
    return &s->settings[key_index(key_named(section, words))];
}

bool scenario_has(const scenario *s, const uncertain_thing *t)
{
    return t->key == NULL || s->settings[key_index(t->key)].state != SETTING_ABSENT;
}

bool scenario_names_salts(const scenario *s)
{
    return scenario_setting_of(s, "bath", "salts")->state == SETTING_GIVEN;
}

scenario scenario_with(const scenario *s, const scenario_script *with)
{
    scenario other = *s;
    other.schedule = with->schedule;
    other.wording = with->wording;
    return other;
}

void scenario_free(scenario *s)
{
    for (size_t i = 0; s->settings != NULL && i < key_count(); i++)
        free(s->settings[i].given);
    free(s->settings);
    schedule_wording_free(&s->wording);
    free(s->path);
    free(s->title);
    free(s->run_sheet);
    free(s->plan.jobs_file);
    scenario_jobs_free(&s->jobs);
    now_free(&s->now);
    free(s->prices.currency);
    free(s->uncertain);
    boil_schedule_free(&s->schedule);
    for (size_t i = 0; i < LESSON_SCRIPTS; i++)
        script_free(&s->scripts[i]);
    for (size_t i = 0; i < LESSON_CHOICES_MAX; i++)
        script_free(&s->choices[i]);
    lesson_free(&s->lesson);
    *s = (scenario){0};
}
