#include "scenario/draft.h"

#include <stdlib.h>
#include <string.h>

#include "base/text.h"

/* A number in place of what the file says. */
static void change(draft *d, const scenario_change *c)
{
    memcpy((char *)d->out + c->thing->where, &c->si, sizeof c->si);
    if (c->thing->key == NULL)
        return;
    size_t i = key_index(c->thing->key);
    d->found[i].found = d->found[i].good = true;
    d->out->settings[i].state = SETTING_GIVEN;
    d->out->settings[i].dimension = c->thing->dimension;
}

/* In the table's order: the source sets the defaults of the heater before the keys that replace them. Who writes a
   section [water control] means to have one. */
static void read_settings(draft *d)
{
    scenario *out = d->out;
    if (draft_has(d, "water control"))
        out->plant.control.mode = BOIL_WATER_CONTROL_ON_OFF;
    for (size_t i = 0; i < key_count(); i++) {
        const key *k = key_at(i);
        if (!d->found[i].found)
            continue;
        d->found[i].good = setting_read(k, &d->found[i], out);
        if (k->where == offsetof(scenario, plant.heater.source)) {
            out->plant.heater = boil_heater_default(out->plant.heater.source);
            out->plant.heat_control = boil_heat_control_default(out->plant.heater.source);
        }
    }
    for (size_t i = 0; i < d->change_count; i++)
        change(d, &d->changes[i]);
}

static void default_title(scenario *out)
{
    const char *slash = strrchr(out->path, '/');
    const char *name = slash != NULL ? slash + 1 : out->path, *dot = strrchr(name, '.');
    if (out->title == NULL)
        out->title = text_copy(name, dot != NULL && dot > name ? (size_t)(dot - name) : strlen(name));
}

static bool begin(draft *d)
{
    d->found = calloc(key_count(), sizeof *d->found);
    d->meant = calloc(key_count(), sizeof *d->meant);
    d->out->settings = calloc(key_count(), sizeof *d->out->settings);
    if (d->found == NULL || d->meant == NULL || d->out->settings == NULL)
        return false;
    for (size_t i = 0; i < key_count(); i++)
        d->out->settings[i] = (scenario_setting){.key = key_at(i), .state = SETTING_DEFAULT};
    return true;
}

static void draft_free(draft *d)
{
    free(d->found);
    free(d->meant);
    for (size_t i = 0; i < DRAFT_KINDS; i++)
        free(d->lines[i].list);
}

static void read_all(draft *d, const char *path)
{
    if (!begin(d)) {
        messages_lost(d->messages);
        return;
    }
    d->out->path = text_copy(d->text->name, strlen(d->text->name));
    if (draft_is_table(d))
        return;
    draft_read_lines(d);
    read_settings(d);
    draft_check_needs(d);
    draft_settle(d);
    draft_ask_model(d);
    draft_read_actions(d, path);
    draft_read_uncertain(d);
    if (d->out->path != NULL)
        default_title(d->out);
    if (d->out->path == NULL || d->out->title == NULL)
        messages_lost(d->messages);
}

bool scenario_text_read(const char *path, scenario_text *t, messages *m)
{
    *t = (scenario_text){.path = path};
    return source_read(&t->text, path, 0, m);
}

void scenario_text_free(scenario_text *t)
{
    source_free(&t->text);
    source_free(&t->sheet);
    source_free(&t->jobs);
    *t = (scenario_text){0};
}

boil_outcome scenario_of_text(scenario_text *t, const scenario_change *changes, size_t count, scenario *out, messages *m)
{
    draft d = {.messages = m,
               .out = out,
               .text = &t->text,
               .sheet = &t->sheet,
               .jobs = &t->jobs,
               .sheet_anywhere = t->sheet_anywhere,
               .changes = changes,
               .change_count = count};
    *out = scenario_usual();
    read_all(&d, t->path);
    messages_sort(m);
    draft_free(&d);
    return m->lost ? BOIL_NO_MEMORY : messages_any(m) ? BOIL_BAD_INPUT : BOIL_OK;
}

boil_outcome scenario_read(const char *path, scenario *out, messages *m)
{
    scenario_text t;
    boil_outcome result = BOIL_BAD_INPUT;
    *out = (scenario){0};
    if (scenario_text_read(path, &t, m))
        result = scenario_of_text(&t, NULL, 0, out, m);
    scenario_text_free(&t);
    return result;
}
