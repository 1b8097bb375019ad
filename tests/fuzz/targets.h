/* fuzz/targets.h -- what is asked of hostile bytes: that nothing crashes, leaks or comes out not a number, and that whoever refuses
   them says why. */
#ifndef FUZZ_TARGETS_H
#define FUZZ_TARGETS_H

#include <assert.h>
#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/program.h"
#include "cli/commands.h"
#include "commands/fit/answer.h"
#include "commands/run/output.h"
#include "scenario/scenario.h"
#include "scenario/uncertain.h"

/* Inputs, told at the end; accepted: by whoever might read it. */
static struct {
    unsigned long tried, accepted;
} fuzz_count;

static inline void fuzz_counts(bool accepted)
{
    fuzz_count.tried++;
    fuzz_count.accepted += accepted;
}

static inline void fuzz_demand(bool holds, const char *what)
{
    if (holds)
        return;
    fprintf(stderr, "not so: %s\n", what);
    abort();
}

/* Of its own: nothing else is in it but what is tried. */
static char fuzz_folder[] = "/tmp/boilback-fuzz-XXXXXX";

static inline void fuzz_end(void)
{
    static const char *const names[] = {"tried.bath", "sheet.csv"};
    char path[100];
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        snprintf(path, sizeof path, "%s/%s", fuzz_folder, names[i]);
        unlink(path);
    }
    rmdir(fuzz_folder);
}

static inline void fuzz_begin(void)
{
    gsl_set_error_handler_off();
    fuzz_demand(mkdtemp(fuzz_folder) != NULL, "there is a folder to work in");
}

static inline const char *fuzz_file(const char *name, const uint8_t *data, size_t size)
{
    static char path[100];
    snprintf(path, sizeof path, "%s/%s", fuzz_folder, name);
    FILE *to = fopen(path, "wb");
    fuzz_demand(to != NULL && fwrite(data, 1, size, to) == size && fclose(to) == 0, "what is tried can be written");
    return path;
}

/* Each has a text, and a place in the file. */
static inline void fuzz_messages(messages *m)
{
    fuzz_demand(!m->lost, "there is memory");
    for (size_t i = 0; i < m->count; i++)
        fuzz_demand(m->list[i].text != NULL && m->list[i].text[0] != '\0', "every message says something");
    messages_free(m);
}

static inline bool fuzz_read(const char *path, scenario *s)
{
    messages m;
    messages_init(&m);
    bool good = scenario_read(path, s, &m) == BOIL_OK;
    fuzz_demand(good != messages_any(&m), "what is refused is complained about");
    fuzz_messages(&m);
    return good;
}

static inline void fuzz_scenario(const uint8_t *data, size_t size)
{
    scenario s;
    const char *path = fuzz_file("tried.bath", data, size);
    bool good = fuzz_read(path, &s);
    fuzz_demand(!good || boil_plant_problem(&s.plant) == NULL, "what is accepted makes sense to the model");
    scenario_free(&s);
    fuzz_counts(good);
}

/* A line of bytes as each kind of quantity. */
static inline void fuzz_quantity(const uint8_t *data, size_t size)
{
    static bool (*const plain[])(cursor *, const char *, quantity *) = {quantity_share,    quantity_factor, quantity_count,
                                                                        quantity_turndown, quantity_clock,  quantity_when};
    source_line line = {(const char *)data, size};
    source text = {.name = (char[]){"tried"}, .lines = &line, .count = 1};
    bool any = false;
    for (unsigned of = 0; of < sizeof plain / sizeof plain[0] + DIM_COUNT; of++) {
        messages m;
        messages_init(&m);
        cursor c = {&m, &text, 1, line.text, line.text + size};
        quantity q = {.si = 0};
        const bounds all = {NULL, -1e300, 1e300};
        bool good = of < DIM_COUNT ? quantity_read(&c, "it", UNIT_OF(of), &q) : plain[of - DIM_COUNT](&c, "it", &q);
        good = good && quantity_within(&c, "it", &q, &all);
        fuzz_demand(good != messages_any(&m), "what is refused is complained about");
        fuzz_demand(!good || isfinite(q.si), "what is accepted is a number");
        fuzz_messages(&m);
        any = any || good;
    }
    fuzz_counts(any);
}

/* Words between zero bytes, for each command: read, not carried out. */
static inline void fuzz_options(const uint8_t *data, size_t size)
{
    char text[1024], *words[64];
    int count = 0;
    size = size < sizeof text - 1 ? size : sizeof text - 1;
    memcpy(text, data, size);
    text[size] = '\0';
    for (size_t at = 0; at < size && count < 64; at += strlen(text + at) + 1)
        words[count++] = text + at;
    const command *c;
    bool any = false;
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        given g;
        options_problem problem;
        options_outcome outcome = options_read(c, count, words, &g, &problem);
        fuzz_demand((outcome == OPTIONS_WRONG) == (problem.text[0] != '\0'), "what is refused is complained about");
        any = any || outcome != OPTIONS_WRONG;
    }
    fuzz_counts(any);
}

/* As a log, and as a run sheet. */
static inline void fuzz_csv(const uint8_t *data, size_t size)
{
    static const char plant[] =
        "schedule = sheet.csv\nduration = 2 h\n[tank]\nlength = 60 in\nwidth = 30 in\ndepth = 36 in\n"
        "level = 26 in\n[bath]\nsalts = 100 % NaOH\nboiling point = 285 degF\n[heat]\ninput = 500 kBtu/h\n";
    messages m;
    fit_log l = {0};
    scenario s;
    messages_init(&m);
    const char *path = fuzz_file("sheet.csv", data, size);
    bool good = fit_log_read(path, 0, &l, &m);
    fuzz_demand(good != messages_any(&m), "what is refused is complained about");
    fuzz_messages(&m);
    fit_log_free(&l);
    bool sheet = fuzz_read(fuzz_file("tried.bath", (const uint8_t *)plant, sizeof plant - 1), &s);
    scenario_free(&s);
    fuzz_counts(good || sheet);
}

typedef struct {
    unsigned long left;
} fuzz_patience;

static inline bool fuzz_goes_on(void *context, double time_s)
{
    fuzz_patience *p = context;
    (void)time_s;
    return p->left > 0 && p->left-- > 0;
}

/* Nowhere a number that is none. */
static inline void fuzz_tell(const carried_out *done)
{
    static const output o = {.full = true, .verbose = true};
    char *text = NULL;
    size_t size = 0;
    FILE *to = open_memstream(&text, &size);
    fuzz_demand(to != NULL, "there is memory");
    run_report(done, &o, to);
    json_document(run_documents[0].fields, done, to);
    fuzz_demand(fclose(to) == 0, "there is memory");
    fuzz_demand(strstr(text, "nan ") == NULL && strstr(text, "-nan") == NULL && strstr(text, " inf ") == NULL,
                "every number told is one");
    free(text);
}

/* Whole, but cut off where it takes long: a run that is interrupted tells what it has. */
static inline void fuzz_run(const uint8_t *data, size_t size)
{
    scenario s;
    carried_out done;
    fuzz_patience patience = {3000};
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 10;
    o.keep_going = fuzz_goes_on;
    o.context = &patience;
    const char *path = fuzz_file("tried.bath", data, size);
    bool good = fuzz_read(path, &s);
    fuzz_counts(good);
    if (good) {
        boil_outcome outcome = carried_out_of(&s, &o, &done);
        fuzz_demand(outcome == BOIL_OK || outcome == BOIL_OUT_OF_RANGE || outcome == BOIL_NO_ROOT || outcome == BOIL_NOT_FINITE,
                    "a case that was accepted is no bad input");
        if (outcome == BOIL_OK) {
            const boil_summary *m = &done.central.summary;
            fuzz_demand(isfinite(m->temperature_end_K) && isfinite(m->still_level_end_m), "the end is known");
            fuzz_demand(m->temperature_end_K > 200 && m->temperature_end_K < 600, "the end is a bath's");
            fuzz_tell(&done);
            carried_out_free(&done);
        }
    }
    scenario_free(&s);
}

#endif
