#include "scenario/scenario.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "analysis/pour_rate.h"
#include "base/array.h"
#include "base/constants.h"
#include "base/format.h"
#include "base/place.h"
#include "base/words.h"
#include "case/plant.h"
#include "design/combustion.h"
#include "design/floor_metal.h"
#include "design/heaters.h"
#include "design/makeup.h"
#include "design/walls.h"
#include "habits/habits.h"
#include "scenario/scripts.h"
#include "transfer/dissolution.h"

#define SECTIONS_MAX 32

/* What is known of a file while it is being read. */
typedef struct {
    messages *messages;
    scenario *out;
    source *text, *sheet, *jobs;
    bool sheet_anywhere;
    const scenario_change *changes;
    size_t change_count;
    setting_line *found;               /* one per key */
    bool *meant;                       /* per key: a misspelt one was taken for it */
    cursor volume;                     /* a line that says how much is in the tank; at NULL: there is none */
    size_t section_line[SECTIONS_MAX]; /* 0: not there */
    struct draft_lines {
        size_t *list;
        size_t count, capacity;
    } actions, uncertain, breaks, measures, passes, choices, names, job_lines, scripts[LESSON_SCRIPTS];
} draft;

#define SCHEDULE "schedule"
#define LESSON "lesson"
#define PASS "pass"
#define CHOICES "choices"
#define NAMES "must name"

static int section_index(const char *section)
{
    const char *const *all = key_sections();
    for (int i = 0; all[i] != NULL; i++)
        if (strcmp(all[i], section) == 0)
            return i;
    return -1;
}

static const char *known_section(const cursor *c, const char *text, size_t length)
{
    const char *const *all = key_sections();
    words_nearest n = words_near(text, length);
    for (size_t i = 0; all[i] != NULL; i++) {
        if (words_same(text, length, all[i]))
            return all[i];
        words_consider(&n, all[i]);
    }
    cursor_error(c, text, "unknown section [%s]%s", words_quoted(text, length).text, words_suggestion(&n).text);
    return NULL;
}

/* The section a header opens; NULL when what follows must be passed over. */
static const char *open_section(draft *d, cursor *c)
{
    const char *close = memchr(c->at, ']', (size_t)(c->end - c->at));
    const char *start = c->at, *name = words_skip(c->at + 1, c->end);
    if (close == NULL) {
        cursor_error(c, c->end, "a section ends with ']'");
        return NULL;
    }
    c->at = close + 1;
    cursor_expect_end(c);
    if (name > close)
        name = close;
    const char *section = known_section(c, name, (size_t)(words_trim(name, close) - name));
    if (section == NULL)
        return NULL;
    size_t *line = &d->section_line[section_index(section)];
    if (*line > 0)
        cursor_error(c, start, "[%s] stands here a second time; the first is on line %zu: move these lines up to it", section,
                     *line);
    else
        *line = c->line;
    return section;
}

static void unknown_key(draft *d, const cursor *c, const char *section, size_t length)
{
    words_nearest n = words_near(c->at, length);
    const key *elsewhere = key_find_elsewhere(c->at, length);
    const key_misnomer *called = key_misnamed(section, c->at, length);
    words_quote q = words_quoted(c->at, length);
    for (size_t i = 0; i < key_count(); i++)
        if (strcmp(key_at(i)->section, section) == 0)
            words_consider(&n, key_at(i)->words);
    if (called != NULL)
        n.word = called->means;
    if (strcmp(section, LESSON) == 0)
        words_consider(&n, PASS);
    if (n.word != NULL && key_find(section, n.word, strlen(n.word)) != NULL)
        d->meant[key_index(key_find(section, n.word, strlen(n.word)))] = true;
    if (called != NULL && called->answer == NULL)
        d->volume = *c;
    else if (called != NULL)
        cursor_error(c, c->at, "'%s' %s", q.text, called->answer);
    else if (elsewhere != NULL)
        cursor_error(c, c->at, "'%s' does not belong %s, but %s", q.text, key_place(section).text,
                     key_place(elsewhere->section).text);
    else
        cursor_error(c, c->at, "unknown key '%s' %s%s", q.text, key_place(section).text, words_suggestion(&n).text);
}

/* A title keeps what looks like a comment. */
static void whole_line(cursor *c)
{
    const source_line *l = &c->source->lines[c->line - 1];
    c->end = words_trim(c->at, l->text + l->length);
}

/* Where "key: value" has its colon, if the key is known; it is read as "key = value", and that is said. */
static const char *colon(const cursor *c, const char *section)
{
    const char *at = memchr(c->at, ':', (size_t)(c->end - c->at));
    size_t length = at != NULL ? (size_t)(words_trim(c->at, at) - c->at) : 0;
    const key *k = length > 0 ? key_find(section, c->at, length) : NULL;
    if (k == NULL)
        return NULL;
    const char *value = words_skip(at + 1, c->end);
    messages_remark(c->messages, c->source, c->line, at, "read as '%s = %s'", k->words,
                    words_quoted(value, (size_t)(c->end - value)).text);
    return at;
}

/* One of a key's own words is meant as it stands. */
static bool is_own_word(const key *k, const cursor *value)
{
    for (size_t i = 0; k->choices != NULL && k->choices[i] != NULL; i++)
        if (words_same(value->at, (size_t)(value->end - value->at), k->choices[i]))
            return true;
    return false;
}

static void note_line(draft *d, struct draft_lines *noted, const cursor *c)
{
    size_t *lines = boil_array_reserve(noted->list, &noted->capacity, noted->count, sizeof *lines);
    if (lines == NULL) {
        messages_lost(d->messages);
        return;
    }
    noted->list = lines;
    lines[noted->count++] = c->line;
}

/* The only key that a section may hold more than once: all its terms have to hold. */
static bool is_pass(const char *section, const char *at, size_t length)
{
    return strcmp(section, LESSON) == 0 && words_same(at, length, PASS);
}

static void note_setting(draft *d, cursor *c, const char *section)
{
    const char *equals = memchr(c->at, '=', (size_t)(c->end - c->at));
    if (equals == NULL)
        equals = colon(c, section);
    if (equals == NULL) {
        cursor_error(c, c->at, "expected 'key = value', got '%s'", words_quoted(c->at, (size_t)(c->end - c->at)).text);
        return;
    }
    const char *key_at_text = c->at;
    size_t length = (size_t)(words_trim(c->at, equals) - c->at);
    if (is_pass(section, c->at, length)) {
        note_line(d, &d->passes, c);
        return;
    }
    const key *k = key_find(section, c->at, length);
    if (k == NULL) {
        unknown_key(d, c, section, length);
        return;
    }
    setting_line *line = &d->found[key_index(k)];
    if (line->found) {
        cursor_error(c, c->at, "'%s' is set a second time; the first is on line %zu", k->words, line->value.line);
        return;
    }
    *line = (setting_line){.found = true, .key_at = key_at_text, .value = *c};
    line->value.at = words_skip(equals + 1, c->end);
    if (k->kind == KEY_TITLE)
        whole_line(&line->value);
    else if (k->kind != KEY_PATH && k->kind != KEY_WORD && !is_own_word(k, &line->value))
        habits_of_value(&line->value);
}

/* Sections of lines that are no settings; NULL for those of settings. */
static struct draft_lines *lines_of(draft *d, const char *section)
{
    struct {
        const char *section;
        struct draft_lines *lines;
    } all[] = {{SCHEDULE, &d->actions},    {"uncertain", &d->uncertain}, {"breaks", &d->breaks}, {"jobs", &d->job_lines},
               {"measures", &d->measures}, {CHOICES, &d->choices},       {NAMES, &d->names}};
    for (size_t i = 0; i < LESSON_SCRIPTS; i++)
        if (strcmp(section, lesson_script_words[i]) == 0)
            return &d->scripts[i];
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        if (strcmp(section, all[i].section) == 0)
            return all[i].lines;
    return NULL;
}

static void read_lines(draft *d)
{
    const char *section = "";
    for (size_t line = 1; line <= d->text->count && !messages_full(d->messages); line++) {
        cursor c = cursor_of_line(d->text, line, d->messages);
        if (cursor_done(&c))
            continue;
        if (*c.at == '[')
            section = open_section(d, &c);
        else if (section != NULL && lines_of(d, section) != NULL)
            note_line(d, lines_of(d, section), &c);
        else if (section != NULL)
            note_setting(d, &c, section);
    }
}

/* One that is there. */
static const key *key_named(const char *section, const char *words)
{
    return key_find(section, words, strlen(words));
}

static const setting_line *line_of(const draft *d, const char *section, const char *words)
{
    return &d->found[key_index(key_named(section, words))];
}

/* Complains about something that is not there: at its section, or at the end of the file. */
static void missing(const draft *d, const char *section, const char *what)
{
    int index = section_index(section);
    size_t line = index >= 0 ? d->section_line[index] : 0;
    const source_line *last = &d->text->lines[d->text->count - 1];
    if (line > 0)
        messages_add(d->messages, d->text, line, cursor_of_line(d->text, line, d->messages).at, "[%s] needs %s", section, what);
    else
        messages_add(d->messages, d->text, d->text->count, last->text + last->length, "a section [%s] with %s is missing",
                     section, what);
}

static void require(const draft *d, const key *k)
{
    char what[64];
    size_t i = key_index(k);
    snprintf(what, sizeof what, "'%s'", k->words);
    if (!d->found[i].found && !d->meant[i])
        missing(d, k->section, what);
}

/* The words of a setting among which a case's must be, each a bit, and why a key stands in the wrong case, behind its name. */
static const struct {
    const char *section, *words;
    unsigned among;
    const char *not_here;
} cases[] = {
    [CASE_ANY] = {NULL, NULL, 0, ""},
    [CASE_BOX] = {"tank", "shape", 1u << BOIL_TANK_BOX,
                  "does not belong to this shape of tank; an upright cylinder has a 'diameter'"},
    [CASE_CYLINDER] = {"tank", "shape", 1u << BOIL_TANK_UPRIGHT_CYLINDER,
                       "does not belong to this shape of tank; a box has 'length' and 'width'"},
    [CASE_FUEL] = {"heat", "source", 1u << BOIL_HEAT_GAS | 1u << BOIL_HEAT_ELECTRIC,
                   "does not belong to a steam coil, whose heat follows from its steam, area and coefficient"},
    [CASE_GAS] = {"heat", "source", 1u << BOIL_HEAT_GAS, "belongs to source = gas"},
    [CASE_STEAM] = {"heat", "source", 1u << BOIL_HEAT_STEAM,
                    "belongs to a steam coil; this source has 'input' and 'efficiency'"},
    [CASE_BY_HAND] = {"heat", "control", 1u << BOIL_HEAT_CONTROL_DIAL,
                      "belongs to control = dial; a control burns full fire, and 'heat 60 %' in the schedule takes it over"},
    [CASE_BY_CONTROL] = {"heat", "control", 1u << BOIL_HEAT_CONTROL_THERMOSTAT | 1u << BOIL_HEAT_CONTROL_MODULATING,
                         "belongs to control = thermostat or modulating; that of automatic water stands in [water control]"},
    [CASE_NOT_MODULATING] = {"heat", "control", 1u << BOIL_HEAT_CONTROL_DIAL | 1u << BOIL_HEAT_CONTROL_THERMOSTAT,
                             "belongs to an on/off thermostat; a modulating control has a 'band'"},
    [CASE_MODULATING] = {"heat", "control", 1u << BOIL_HEAT_CONTROL_MODULATING, "belongs to control = modulating"},
    [CASE_RINSE] = {NULL, NULL, 0, "belongs to a section [rinse]"},
    [CASE_PRICES] = {NULL, NULL, 0, "belongs to a section [prices]"},
    [CASE_EXHAUST] = {NULL, NULL, 0, "belongs to a section [exhaust]"},
    [CASE_DESIGN] = {NULL, NULL, 0, "belongs to a section [design]"},
    [CASE_LESSON] = {NULL, NULL, 0, "belongs to a section [lesson]"},
    [CASE_PLAN] = {NULL, NULL, 0, "belongs to a section [plan]"},
    [CASE_CONTROL] = {NULL, NULL, 0, "belongs to a section [water control]"},
    [CASE_ON_OFF] = {"water control", "mode", 1u << BOIL_WATER_CONTROL_NONE | 1u << BOIL_WATER_CONTROL_ON_OFF,
                     "belongs to mode = on/off; a time-proportioned valve has 'band' and 'period'"},
    [CASE_PROPORTIONED] = {"water control", "mode", 1u << BOIL_WATER_CONTROL_NONE | 1u << BOIL_WATER_CONTROL_PROPORTIONED,
                           "belongs to mode = time-proportioned; an on/off valve has a 'differential'"},
};

static bool has_control(const draft *d)
{
    return d->section_line[section_index("water control")] > 0;
}

static bool has_rinse(const draft *d)
{
    return d->section_line[section_index("rinse")] > 0;
}

/* The section that a case is the presence of; NULL: it is none. */
static const char *section_of_case(key_case only)
{
    static const char *const sections[CASE_CONTROL] = {[CASE_RINSE] = "rinse",   [CASE_PRICES] = "prices",
                                                       [CASE_EXHAUST] = "exhaust", [CASE_DESIGN] = "design",
                                                       [CASE_LESSON] = "lesson",   [CASE_PLAN] = "plan"};
    return only >= CASE_CONTROL ? "water control" : sections[only];
}

static bool case_holds(const draft *d, key_case only)
{
    unsigned word;
    const char *section = section_of_case(only);
    if (section != NULL && d->section_line[section_index(section)] == 0)
        return false;
    if (cases[only].words == NULL)
        return true;
    memcpy(&word, (const char *)d->out + key_named(cases[only].section, cases[only].words)->where, sizeof word);
    return (cases[only].among >> word & 1) != 0;
}

/* The setting that decides a case was given, but could not be read: nothing is known. */
static bool case_unknown(const draft *d, key_case only)
{
    const setting_line *by = cases[only].words != NULL ? line_of(d, cases[only].section, cases[only].words) : NULL;
    return by != NULL && by->found && !by->good;
}

/* A key that belongs to some scenarios only: refused elsewhere. */
static void refuse_elsewhere(draft *d, const key *k)
{
    setting_line *line = &d->found[key_index(k)];
    d->out->settings[key_index(k)].state = SETTING_ABSENT;
    if (line->found)
        cursor_error(&line->value, line->key_at, "'%s' %s", k->words, cases[k->only].not_here);
}

/* Of several keys that say the same thing in different ways, one counts. */
static void choose_one(draft *d, key_need need, const char *section, const char *none)
{
    const key *first = NULL, *meant = NULL;
    for (size_t i = 0; i < key_count(); i++) {
        const key *k = key_at(i);
        setting_line *line = &d->found[i];
        if (k->need != need)
            continue;
        if (d->meant[i])
            meant = k;
        if (line->found && first != NULL)
            cursor_error(&line->value, line->key_at, "'%s' stands beside '%s' of line %zu: give only one of them", k->words,
                         first->words, d->found[key_index(first)].value.line);
        else if (line->found)
            first = k;
    }
    for (size_t i = 0; i < key_count(); i++)
        if (key_at(i)->need == need && !d->found[i].found && (first != NULL || none != NULL))
            d->out->settings[i].state = SETTING_ABSENT;
    if (first == NULL && meant == NULL && none != NULL)
        missing(d, section, none);
}

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
    if (has_control(d))
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

/* No salts in the bath, so none need be named. */
static bool is_plain_water(const draft *d)
{
    bool by_amount = line_of(d, "bath", "salt fraction")->good || line_of(d, "bath", "strength")->good;
    return by_amount && d->out->plant.charge.value == 0;
}

static void require_salts(draft *d, const key *k)
{
    if (!is_plain_water(d))
        require(d, k);
    else if (!d->found[key_index(k)].found)
        d->out->settings[key_index(k)].state = SETTING_ABSENT;
}

static void check_needs(draft *d)
{
    for (size_t i = 0; i < key_count(); i++) {
        const key *k = key_at(i);
        if (case_unknown(d, k->only))
            continue;
        if (!case_holds(d, k->only))
            refuse_elsewhere(d, k);
        else if (k->need == NEED_ALWAYS)
            require(d, k);
        else if (k->need == NEED_SALTS)
            require_salts(d, k);
    }
    choose_one(d, NEED_LEVEL, "tank", "'level'");
    choose_one(d, NEED_STRENGTH, "bath", "one of 'boiling point', 'strength' and 'salt fraction'");
    if (case_holds(d, CASE_STEAM))
        choose_one(d, NEED_STEAM, "heat", "one of 'steam temperature' and 'steam pressure'");
    choose_one(d, NEED_PRESSURE, "room", NULL);
    choose_one(d, NEED_FIRE, "heat", NULL);
}

static scenario_setting *setting_of(draft *d, const char *section, const char *words)
{
    return &d->out->settings[key_index(key_named(section, words))];
}

/* A volume in a minute becomes a mass at the water's own temperature. */
static void settle_control(draft *d)
{
    boil_water_control *c = &d->out->plant.control;
    bool freezing = d->out->plant.ambient.temperature_K < BOIL_ZERO_CELSIUS;
    if (!has_control(d))
        return;
    if (!line_of(d, "water control", "water temperature")->found) {
        if (freezing)
            missing(d, "water control", "'water temperature', because the room is below freezing");
        else
            c->water_K = d->out->plant.ambient.temperature_K;
    }
    if (setting_of(d, "water control", "rate")->dimension == DIM_VOLUME_FLOW)
        c->rate_kg_s *= boil_water_density(c->water_K);
}

/* Water is as warm as the room, where that is not freezing; a volume is weighed at its own temperature. */
static void settle_afloat(draft *d)
{
    boil_water_afloat *a = &d->out->plant.afloat;
    if (!line_of(d, "bath", "water afloat")->good)
        return;
    if (a->temperature_K == 0)
        a->temperature_K = fmax(d->out->plant.ambient.temperature_K, BOIL_ZERO_CELSIUS);
    if (setting_of(d, "bath", "water afloat")->dimension == DIM_VOLUME)
        a->mass_kg *= boil_water_density(a->temperature_K);
}

static void report_problem(draft *d, const char *section, const char *problem)
{
    int index = section_index(section);
    size_t line = index >= 0 && d->section_line[index] > 0 ? d->section_line[index] : 1;
    if (problem != NULL)
        messages_add(d->messages, d->text, line, cursor_of_line(d->text, line, d->messages).at, "%s", problem);
}

/* A plate of salt, with its pores, over the whole bath or its floor. */
static void settle_plate(draft *d, const char *words, double *kg)
{
    if (line_of(d, "bath", words)->good && setting_of(d, "bath", words)->dimension == DIM_LENGTH)
        *kg = boil_dissolution_crust_mass(*kg, boil_tank_area(&d->out->plant.tank));
}

static void settle_fallen_out(draft *d)
{
    boil_plant *p = &d->out->plant;
    settle_plate(d, "crust", &p->crust_kg);
    settle_plate(d, "salt on the floor", &p->bed_kg);
    p->salt_stated = line_of(d, "bath", "crust")->found || line_of(d, "bath", "salt on the floor")->found;
}

/* What is wrong with a setting that stands in the file, or was put in its place. */
static void report_setting(draft *d, const char *section, const char *words, const char *problem)
{
    const cursor *value = &line_of(d, section, words)->value;
    if (problem != NULL && value->at != NULL)
        cursor_error(value, value->at, "%s", problem);
    else
        report_problem(d, section, problem);
}

/* A flow, or a volume, says how much heat there is of liquid propane alone. */
static void settle_fuel(draft *d)
{
    scenario *out = d->out;
    bool propane = out->plant.heater.source == BOIL_HEAT_GAS && out->fuel == FUEL_PROPANE;
    bool by_flow = line_of(d, "heat", "input")->good && setting_of(d, "heat", "input")->dimension == DIM_VOLUME_FLOW;
    bool by_volume = line_of(d, "prices", "gas")->good && setting_of(d, "prices", "gas")->dimension == DIM_VOLUME;
    if (by_flow && !propane)
        report_setting(d, "heat", "input",
                       "a flow is an input of liquid propane alone: write fuel = propane, or the input in power");
    if (by_volume && !propane)
        report_setting(
            d, "prices", "gas",
            "natural gas is priced by its heat, such as 1.20 per therm; by volume only liquid propane is, with fuel = propane");
    if (by_flow)
        out->plant.heater.input_W *= BOIL_PROPANE_J_M3;
}

/* A gauge counts from the room's pressure. */
static void settle_steam(draft *d)
{
    scenario *out = d->out;
    double ambient = out->plant.ambient.pressure_Pa;
    if (isnan(out->steam_gauge_Pa))
        return;
    if (setting_of(d, "heat", "steam pressure")->dimension == DIM_PRESSURE)
        out->steam_gauge_Pa -= ambient;
    out->plant.heater.steam_K = boil_water_saturation_temperature(out->steam_gauge_Pa + ambient);
}

/* The next time that the clock shows the shift's end; water as warm as the room. */
static void settle_plan(draft *d)
{
    const double day_s = 86400;
    scenario_plan *p = &d->out->plan;
    double water_K = fmax(d->out->plant.ambient.temperature_K, BOIL_ZERO_CELSIUS);
    if (line_of(d, "plan", "end")->good)
        p->end_s += p->end_s > d->out->start_s ? -d->out->start_s : day_s - d->out->start_s;
    if (setting_of(d, "plan", "water")->dimension == DIM_VOLUME_FLOW)
        p->water_kg_s *= boil_water_density(water_K);
}

/* What several keys share, or what is no field of the plant. */
static void settle(draft *d)
{
    scenario *out = d->out;
    out->plant.charge.basis = line_of(d, "bath", "strength")->found        ? BOIL_INITIAL_BY_STRENGTH
                              : line_of(d, "bath", "salt fraction")->found ? BOIL_INITIAL_BY_SALT_FRACTION
                                                                           : BOIL_INITIAL_BY_BOILING_POINT;
    if (!isnan(out->freeboard_m))
        out->plant.tank.level_m = out->plant.tank.depth_m - out->freeboard_m;
    if (!isnan(out->altitude_m))
        out->plant.ambient.pressure_Pa = boil_ambient_pressure_at_altitude(out->altitude_m);
    else
        setting_of(d, "room", "altitude")->state = SETTING_ABSENT;
    if (isnan(out->turndown))
        setting_of(d, "heat", "turndown")->state = SETTING_ABSENT;
    else
        out->plant.heat_control.minimum_fire = 1 / out->turndown;
    settle_control(d);
    settle_steam(d);
    settle_afloat(d);
    settle_fallen_out(d);
    settle_fuel(d);
    settle_plan(d);
    if (has_rinse(d) && !line_of(d, "rinse", "temperature")->found)
        out->plant.rinse.temperature_K = fmax(out->plant.ambient.temperature_K, BOIL_ZERO_CELSIUS);
}

/* Whoever knows the volume is told the level, where the tank's sides are known. */
static void report_volume(draft *d)
{
    const cursor *line = &d->volume;
    const boil_tank *t = &d->out->plant.tank;
    const char *equals = line->at != NULL ? memchr(line->at, '=', (size_t)(line->end - line->at)) : NULL;
    quantity q;
    if (line->at == NULL)
        return;
    cursor value = *line;
    value.at = equals != NULL ? equals + 1 : line->end;
    double area_m2 = boil_tank_area(t);
    if (!(area_m2 > 0) || !quantity_comes(value, UNIT_OF(DIM_VOLUME)) ||
        !quantity_read(&value, "volume", UNIT_OF(DIM_VOLUME), &q)) {
        cursor_error(line, line->at, "'volume' is not read: 'level' is the volume over the tank's own area");
        return;
    }
    cursor_error(line, line->at, "'volume' is not read: level = volume / (%s) = %s",
                 t->shape == BOIL_TANK_BOX ? "length x width" : "0.785 x diameter x diameter",
                 format_quantity(UNITS_US, DIM_LENGTH, q.si / area_m2).text);
}

/* Both as they were written. */
static void report_height(draft *d, const char *what, double height_m)
{
    const setting_line *height = line_of(d, "tank", what), *depth = line_of(d, "tank", "depth");
    const cursor *high = &height->value, *rim = &depth->value;
    if (height->good && depth->good && height_m > d->out->plant.tank.depth_m)
        cursor_error(high, high->at, "the %s (%s) is above the rim (%s)", what,
                     words_quoted(high->at, (size_t)(high->end - high->at)).text,
                     words_quoted(rim->at, (size_t)(rim->end - rim->at)).text);
}

static void report_charge(draft *d)
{
    boil_initial_state state;
    boil_outcome outcome = boil_plant_initial(&d->out->plant, &state);
    if (outcome == BOIL_NO_MEMORY)
        messages_lost(d->messages);
    if (outcome == BOIL_OK)
        return;
    for (size_t i = 0; i < key_count(); i++)
        if (key_at(i)->need == NEED_STRENGTH && d->found[i].found)
            cursor_error(&d->found[i].value, d->found[i].value.at,
                         "there is no boiling bath of these salts with this '%s' that the correlations cover",
                         key_at(i)->words);
}

/* Only a plant that was read without a mistake is worth it. */
static void ask_model(draft *d)
{
    const boil_plant *p = &d->out->plant;
    report_volume(d);
    report_height(d, "level", p->tank.level_m);
    report_height(d, "mark", p->tank.mark_m);
    if (messages_any(d->messages))
        return;
    report_problem(d, "tank", boil_tank_problem(&p->tank));
    report_problem(d, "room", boil_ambient_problem(&p->ambient));
    report_problem(d, "heat", boil_heater_problem(&p->heater));
    report_problem(d, "heat", boil_heat_control_problem(&p->heat_control));
    report_problem(d, "losses", boil_losses_problem(&p->losses));
    report_problem(d, "water control", boil_water_control_problem(&p->control));
    report_setting(d, "bath", "water afloat", boil_plant_afloat_problem(p));
    if (!messages_any(d->messages))
        report_setting(d, "bath", p->crust_kg > 0 ? "crust" : "salt on the floor", boil_plant_crust_problem(p));
    if (!messages_any(d->messages))
        report_problem(d, "heat", boil_plant_heat_problem(p));
    if (!messages_any(d->messages))
        report_problem(d, "bath", boil_plant_problem(p));
    if (!messages_any(d->messages))
        report_charge(d);
}

/* A scenario from somebody else must not show what it likes of any file: messages echo what they are about. */
static bool may_be_read(draft *d, const setting_line *line, const char *path, const char *scenario_path, const char *what)
{
    char *folder = place_folder(scenario_path);
    if (folder == NULL)
        messages_lost(d->messages);
    bool may = folder != NULL && (d->sheet_anywhere || place_within(path, folder));
    if (folder != NULL && !may)
        cursor_error(&line->value, line->value.at,
                     "a %s lies in its scenario's folder or below it: move it there, or say --sheet-anywhere", what);
    free(folder);
    return may;
}

static void read_run_sheet(draft *d, schedule_draft *a, const char *scenario_path)
{
    const setting_line *line = line_of(d, "", SCHEDULE);
    if (d->actions.count > 0) {
        cursor_error(&line->value, line->key_at, "the acts are in a file or in [schedule], not in both");
        return;
    }
    char *path = place_beside(scenario_path, d->out->run_sheet);
    if (path == NULL)
        messages_lost(d->messages);
    else if (d->sheet->bytes != NULL ||
             (may_be_read(d, line, path, scenario_path, "run sheet") && source_read(d->sheet, path, 1, d->messages)))
        run_sheet_read(d->sheet, a, d->messages);
    free(path);
}

/* The rows of the file, which is read once. */
static void read_jobs_file(draft *d, const job_reader *r, const char *scenario_path)
{
    const setting_line *line = line_of(d, "plan", "jobs");
    char *path = place_beside(scenario_path, d->out->plan.jobs_file);
    if (d->job_lines.count > 0)
        cursor_error(&line->value, line->key_at, "the jobs are in a file or in [jobs], not in both");
    else if (path == NULL)
        messages_lost(d->messages);
    else if (d->jobs->bytes != NULL || (may_be_read(d, line, path, scenario_path, "list of jobs") &&
                                        source_read(d->jobs, path, 2, d->messages)))
        jobs_read_csv(r, d->jobs, d->messages);
    free(path);
}

static void read_jobs(draft *d, schedule_draft *a, const char *scenario_path)
{
    scenario *out = d->out;
    const job_reader r = {schedule_reader(a), out->start_s, out->plan.end_s, &out->jobs};
    if (out->plan.jobs_file != NULL)
        read_jobs_file(d, &r, scenario_path);
    for (size_t i = 0; i < d->job_lines.count && !messages_full(d->messages); i++) {
        cursor c = cursor_of_line(d->text, d->job_lines.list[i], d->messages);
        if (out->plan.jobs_file == NULL)
            jobs_read_line(&r, &c);
    }
    const char *file = out->plan.jobs_file != NULL && d->jobs->name != NULL ? d->jobs->name : d->text->name;
    out->jobs.file = text_copy(file, strlen(file));
    if (out->jobs.file == NULL)
        messages_lost(d->messages);
}

static bool is_act(const char *word)
{
    const action_type *type;
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++)
        if (words_same(word, strlen(word), type->keyword))
            return true;
    return false;
}

static void read_measures(draft *d, measure_list *all)
{
    for (size_t i = 0; i < d->measures.count && !messages_full(d->messages); i++) {
        cursor c = cursor_of_line(d->text, d->measures.list[i], d->messages);
        const char *word = c.at;
        if (measure_read(&c, all) && is_act(all->list[all->count - 1].word)) {
            all->count--;
            cursor_error(&c, word, "'%s' is an act: take another word", all->list[all->count].word);
        }
    }
}

static size_t line_of_section(const draft *d, const char *section)
{
    return d->section_line[section_index(section)];
}

/* What belongs to a scripted lesson, in a scenario that is none. */
static void refuse_without_lesson(draft *d)
{
    const char *const *all = key_sections();
    for (size_t i = 0; all[i] != NULL; i++)
        if (key_section_is_script(all[i]) && line_of_section(d, all[i]) > 0)
            report_problem(d, all[i], "this section belongs to a lesson: a section [lesson] is missing");
}

static bool is_scripted(const draft *d)
{
    const char *const *all = key_sections();
    for (size_t i = 0; all[i] != NULL; i++)
        if (key_section_is_script(all[i]) && line_of_section(d, all[i]) > 0)
            return true;
    return false;
}

static void read_scripts(draft *d, const script_reader *r)
{
    scenario *out = d->out;
    for (size_t i = 0; i < LESSON_SCRIPTS; i++) {
        const char *section = lesson_script_words[i];
        script_section s = {section, line_of_section(d, section), d->scripts[i].list, d->scripts[i].count};
        if (s.header == 0 && i != LESSON_IDLE)
            missing(d, section, "what is done then");
        s.header = s.header > 0 ? s.header : line_of_section(d, LESSON);
        script_read(r, &s, &out->scripts[i]);
    }
    if (line_of_section(d, CHOICES) > 0)
        script_choices_read(r, &(script_section){CHOICES, line_of_section(d, CHOICES), d->choices.list, d->choices.count}, out);
}

static void read_terms(draft *d)
{
    lesson *l = &d->out->lesson;
    for (size_t i = 0; i < d->passes.count && !messages_full(d->messages); i++) {
        cursor c = cursor_of_line(d->text, d->passes.list[i], d->messages);
        c.at = (const char *)memchr(c.at, '=', (size_t)(c.end - c.at)) + 1;
        lesson_term_read(&c, l);
    }
    for (size_t i = 0; i < d->names.count && !messages_full(d->messages); i++) {
        cursor c = cursor_of_line(d->text, d->names.list[i], d->messages);
        lesson_names_read(&c, l);
    }
    if (d->passes.count == 0)
        missing(d, LESSON, "at least one 'pass = ...'");
    if (!line_of(d, "", "duration")->found)
        missing(d, LESSON, "a 'duration' above the first section: all its scripts are judged at the same moment");
}

/* Once [schedule] is read, and before it is finished. */
static void read_lesson(draft *d, const schedule_draft *common)
{
    scenario *out = d->out;
    const script_reader r = {common,     d->text, d->actions.list, d->actions.count, d->sheet, !messages_any(d->messages),
                             d->messages};
    out->lesson.given = line_of_section(d, LESSON) > 0;
    if (!out->lesson.given) {
        refuse_without_lesson(d);
        return;
    }
    read_terms(d);
    out->lesson.scripted = is_scripted(d);
    if (out->lesson.scripted)
        read_scripts(d, &r);
}

static void read_actions(draft *d, const char *path)
{
    const setting_line *duration = line_of(d, "", "duration");
    const setting_line *start = line_of(d, "", "start"), *times = line_of(d, "", "times");
    double end_s = duration->good ? d->out->schedule.duration_s : duration->found ? SCHEDULE_LATEST_S : HUGE_VAL;
    moment_frame frame = {d->out->times, start->good, d->out->start_s, end_s};
    if (frame.count == MOMENTS_BY_CLOCK && !start->found)
        cursor_error(&times->value, times->value.at, "'by the clock' needs 'start', the clock at the start");
    schedule_draft a = schedule_begin(&d->out->plant, !messages_any(d->messages), &frame);
    a.reader.positions = (size_t)d->out->plant.tank.positions;
    read_measures(d, &a.reader.measures);
    for (size_t i = 0; i < d->breaks.count && !messages_full(d->messages); i++) {
        cursor c = cursor_of_line(d->text, d->breaks.list[i], d->messages);
        break_read(&frame, &c, &a.breaks);
    }
    read_jobs(d, &a, path);
    if (d->out->run_sheet != NULL)
        read_run_sheet(d, &a, path);
    for (size_t i = 0; i < d->actions.count && !messages_full(d->messages); i++) {
        cursor c = cursor_of_line(d->text, d->actions.list[i], d->messages);
        habits_of_line(&c);
        schedule_read(&a, &c, &c);
    }
    read_lesson(d, &a);
    if (!schedule_finish(&a, &d->out->schedule, &d->out->wording))
        messages_lost(d->messages);
    schedule_draft_free(&a);
}

/* Only what has a value here can be uncertain, and only once. */
static bool may_be_uncertain(const draft *d, const cursor *c, const uncertain_thing *t)
{
    const scenario *out = d->out;
    if (t->key != NULL && out->settings[key_index(t->key)].state == SETTING_ABSENT)
        return cursor_error(c, c->at, "'%s' has no value in this scenario that could be uncertain", t->words);
    if (t->key != NULL && t->key->need == NEED_STRENGTH && !scenario_names_salts(out))
        return cursor_error(c, c->at, "where '%s' is uncertain there may be salts: name them in [bath]", t->words);
    for (size_t i = 0; i < out->uncertain_count; i++)
        if (out->uncertain[i].thing.where == t->where)
            return cursor_error(c, c->at, "'%s' stands here a second time", t->words);
    if (out->uncertain_count == BOIL_SAMPLING_INPUTS)
        return cursor_error(c, c->at, "more than %d things are uncertain", BOIL_SAMPLING_INPUTS);
    return true;
}

static void read_uncertain(draft *d)
{
    scenario *out = d->out;
    out->uncertain = d->uncertain.count > 0 ? calloc(BOIL_SAMPLING_INPUTS, sizeof *out->uncertain) : NULL;
    if (d->uncertain.count > 0 && out->uncertain == NULL)
        messages_lost(d->messages);
    for (size_t i = 0; out->uncertain != NULL && i < d->uncertain.count && !messages_full(d->messages); i++) {
        cursor start = cursor_of_line(d->text, d->uncertain.list[i], d->messages), c;
        uncertain u;
        habits_of_value(&start);
        c = start;
        if (uncertain_read(&c, &u) && may_be_uncertain(d, &start, &u.thing))
            out->uncertain[out->uncertain_count++] = u;
    }
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

static void read_all(draft *d, const char *path)
{
    if (!begin(d)) {
        messages_lost(d->messages);
        return;
    }
    d->out->path = text_copy(d->text->name, strlen(d->text->name));
    read_lines(d);
    read_settings(d);
    check_needs(d);
    settle(d);
    ask_model(d);
    read_actions(d, path);
    read_uncertain(d);
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

static scenario_prices no_prices(void)
{
    const double none = (double)NAN;
    return (scenario_prices){none, none, none, none, none, none, none, none, NULL};
}

/* A minute for a basket, and for the boil to settle: judgement. As much water as half a garden hose gives. */
static scenario_plan usual_plan(void)
{
    return (scenario_plan){.hoist_s = 60, .settle_s = 60, .water_kg_s = BOIL_POUR_RATE_WATER_KG_S, .end_s = HUGE_VAL};
}

/* What a designer who says nothing is taken to wish. */
static scenario_exhaust no_hood(void)
{
    const double none = (double)NAN;
    return (scenario_exhaust){.open_area_m2 = none, .winter_K = none, .degree_days_F = none};
}

static scenario_design usual_design(void)
{
    const double none = (double)NAN;
    return (scenario_design){.margin = 0.15,
                             .flue_K = none,
                             .flue_oxygen = none,
                             .casing_loss = BOIL_COMBUSTION_CASING_LOSS,
                             .tube_efficiency = BOIL_TUBE_EFFICIENCY,
                             .element_W_m2 = BOIL_ELEMENT_FLUX,
                             .heated_share = 1,
                             .peak_flux = BOIL_FLOOR_PEAK,
                             .floor_m = none,
                             .stress_Pa = BOIL_STEEL_STRESS,
                             .corrosion_m = BOIL_CORROSION,
                             .basket_m = none,
                             .spacing_m = BOIL_BASKET_SPACING,
                             .water_gauge_Pa = BOIL_MAKEUP_PRESSURE,
                             .water_K = none,
                             .rinse_ratio = 1000,
                             .hours_a_year = none,
                             .idle_s = 14 * 3600,
                             .insulation_price = none,
                             .capital_rate = 0.15};
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
    *out = (scenario){.plant = boil_plant_default(),
                      .altitude_m = (double)NAN,
                      .freeboard_m = (double)NAN,
                      .turndown = (double)NAN,
                      .steam_gauge_Pa = (double)NAN};
    out->prices = no_prices();
    out->exhaust = no_hood();
    out->design = usual_design();
    out->plan = usual_plan();
    read_all(&d, t->path);
    messages_sort(m);
    free(d.found);
    free(d.meant);
    free(d.actions.list);
    free(d.uncertain.list);
    free(d.breaks.list);
    free(d.measures.list);
    free(d.passes.list);
    free(d.choices.list);
    free(d.names.list);
    for (size_t i = 0; i < LESSON_SCRIPTS; i++)
        free(d.scripts[i].list);
    free(d.job_lines.list);
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

bool scenario_names_salts(const scenario *s)
{
    return s->settings[key_index(key_named("bath", "salts"))].state == SETTING_GIVEN;
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
