#include <errno.h>
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "base/program.h"
#include "base/memory.h"
#include "commands/explore/answer.h"

typedef struct {
    explore_answer *answer;
    const char *path;
    FILE *from;
    char *names, *line; /* the first line, and the one being read */
    size_t number;
    bool endless;
    explore_input *input; /* being described */
} reading;

static bool complain(const reading *r, const char *what)
{
    return !memory_was_refused() && program_complain("%s:%zu: %s", text_plain(r->path).text, r->number, what);
}

/* A line may come from anywhere, and never end. False: there is none; `endless`: it is none of a study. */
static bool next_line(reading *r)
{
    const size_t most = 1 << 20;
    if (r->line == NULL && (r->line = memory_needed(malloc(most))) == NULL)
        return false;
    if (r->endless || fgets(r->line, (int)most, r->from) == NULL)
        return false;
    r->number++;
    size_t length = strlen(r->line);
    r->endless = (length == 0 || r->line[length - 1] != '\n') && !feof(r->from);
    while (length > 0 && (r->line[length - 1] == '\n' || r->line[length - 1] == '\r'))
        r->line[--length] = '\0';
    return !r->endless;
}

static bool copy(char *to, size_t size, const char *from)
{
    size_t length = strlen(from);
    if (length >= size)
        return false;
    memcpy(to, from, length + 1);
    return true;
}

static bool read_plan(explore_answer *s, const char *text)
{
    unsigned long seed;
    bool good = sscanf(text, "%zu %zu %lu", &s->plan.points, &s->plan.replicates, &seed) == 3 && seed <= UINT32_MAX;
    s->plan.seed = good ? (uint32_t)seed : 0;
    return good;
}

static bool read_input(reading *r, bool grid, const char *words)
{
    explore_answer *s = r->answer;
    if (!grid && s->input_count == BOIL_SAMPLING_INPUTS)
        return false;
    r->input = grid ? &s->grid.input : &s->inputs[s->input_count++];
    return copy(r->input->words, sizeof r->input->words, words);
}

static bool read_spread(explore_input *i, const char *text)
{
    boil_spread *s = &i->spread;
    int dimension, kind;
    size_t count;
    if (sscanf(text, "%d %d %lf %lf %lf %lf %zu", &dimension, &kind, &s->low, &s->high, &s->likely, &s->deviation, &count) != 7)
        return false;
    i->dimension = (unit_dimension)dimension;
    s->kind = (boil_spread_kind)kind;
    return dimension >= 0 && dimension <= DIM_COUNT && kind >= 0 && kind <= BOIL_SPREAD_LISTED;
}

static bool read_load(explore_answer *s, const char *text)
{
    char *end;
    if (s->load_count == EXPLORE_LOADS_MAX)
        return false;
    explore_load *l = &s->loads[s->load_count++];
    l->time_s = strtod(text, &end);
    return end != text && *end == ' ' && copy(l->words, sizeof l->words, end + 1);
}

static bool read_of_input(explore_input *i, const char *name, const char *text)
{
    if (strcmp(name, "said") == 0)
        return copy(i->as_written, sizeof i->as_written, text);
    if (strcmp(name, "is") == 0)
        return read_spread(i, text);
    if (strcmp(name, "value") != 0 || i->spread.count == BOIL_SPREAD_VALUES)
        return false;
    i->spread.value[i->spread.count++] = strtod(text, NULL);
    return true;
}

/* "name = value": what of it is known goes into the study. */
static bool read_fact(reading *r, const char *name, const char *value)
{
    explore_answer *s = r->answer;
    const struct {
        const char *name;
        double *into;
    } numbers[] = {{"start_s", &s->start_s}, {"limit_s", &s->limit_s}, {"freeboard_limit_m", &s->freeboard_limit_m}};
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++)
        if (strcmp(name, numbers[i].name) == 0) {
            *numbers[i].into = strtod(value, NULL);
            return true;
        }
    if (strcmp(name, "title") == 0)
        return copy(s->title, sizeof s->title, value);
    if (strcmp(name, "scenario") == 0)
        return copy(s->path, sizeof s->path, value);
    if (strcmp(name, "version") == 0)
        return strcmp(value, BOIL_VERSION_TEXT) == 0;
    if (strcmp(name, "plan") == 0)
        return read_plan(s, value);
    if (strcmp(name, "grid") == 0 || strcmp(name, "input") == 0)
        return read_input(r, name[0] == 'g', value);
    if (strcmp(name, "load") == 0)
        return read_load(s, value);
    if (strcmp(name, "steps") == 0)
        return sscanf(value, "%zu", &s->grid.count) == 1 && s->grid.count >= 1 && s->grid.count <= EXPLORE_GRID_MAX;
    return r->input != NULL && read_of_input(r->input, name, value);
}

/* What stands behind so many commas, unquoted in place, and cut off from what stands before it. NULL: there is nothing. */
static char *last_cell(char *line, size_t commas)
{
    char *at = line;
    for (; commas > 0; commas--) {
        at = strchr(at, ',');
        if (at == NULL)
            return NULL;
        at++;
    }
    if (at == line || *at == '\0')
        return NULL;
    at[-1] = '\0';
    if (*at != '"')
        return at;
    char *cell = at, *to = at++;
    while (*at != '\0' && !(at[0] == '"' && at[1] != '"')) {
        at += *at == '"';
        *to++ = *at++;
    }
    *to = '\0';
    return cell;
}

/* The next "name = value" of the plan, its backslashes taken out in place; NULL at the end. */
static char *next_fact(char **at)
{
    char *fact = *at, *to = *at, *from = *at;
    if (*from == '\0')
        return NULL;
    while (*from != '\0' && *from != ';') {
        from += *from == '\\' && from[1] != '\0';
        *to++ = *from++;
    }
    *at = *from == ';' ? from + 1 + strspn(from + 1, " ") : from;
    *to = '\0';
    return fact;
}

static bool read_plan_cell(reading *r, char *plan)
{
    char *fact;
    while ((fact = next_fact(&plan)) != NULL) {
        char *equals = strstr(fact, " = ");
        if (equals != NULL)
            *equals = '\0';
        if (equals == NULL || !read_fact(r, fact, equals + 3))
            return complain(r, "the cell 'study' is no plan of a study of version " BOIL_VERSION_TEXT);
    }
    return true;
}

/* Names of columns, and the plan in the last cell of the first row. What else that row has stays in the line. */
static bool read_head(reading *r)
{
    static const char first[] = "row,", last[] = ",study";
    if (!next_line(r) || strncmp(r->line, first, strlen(first)) != 0 || strlen(r->line) < strlen(last) ||
        strcmp(r->line + strlen(r->line) - strlen(last), last) != 0)
        return complain(r, "is no file of rows of a study");
    size_t commas = 0;
    for (const char *at = r->line; *at != '\0'; at++)
        commas += *at == ',';
    r->names = r->line;
    r->line = NULL;
    char *plan = next_line(r) ? last_cell(r->line, commas) : NULL;
    if (plan == NULL)
        return complain(r, "the last cell of the first row must say what study it is: keep the first row first");
    return read_plan_cell(r, plan);
}

static bool has_names(const reading *r)
{
    char *own = NULL;
    size_t size = 0;
    FILE *to = memory_stream(&own, &size);
    if (to == NULL)
        return false;
    explore_csv_names(r->answer, to);
    bool same = memory_stream_close(to, &own) && strncmp(own, r->names, strlen(r->names)) == 0 && own[strlen(r->names)] == '\n';
    free(own);
    return same;
}

static bool begin(reading *r)
{
    explore_answer *s = r->answer;
    for (size_t i = 0; i < s->input_count; i++)
        if (boil_spread_problem(&s->inputs[i].spread) != NULL)
            return complain(r, boil_spread_problem(&s->inputs[i].spread));
    s->plan.inputs = s->input_count;
    if (s->input_count > 0 && boil_sampling_plan_problem(&s->plan) != NULL)
        return complain(r, boil_sampling_plan_problem(&s->plan));
    if (s->grid.count > 0 && !(s->grid.input.spread.low < s->grid.input.spread.high))
        return complain(r, "the steps of the grid lead nowhere");
    if (!explore_begun(s))
        return false;
    return has_names(r) || complain(r, "the columns are not those of version " BOIL_VERSION_TEXT);
}

/* An empty cell is NaN. */
static bool read_cells(const explore_answer *s, const char *at, double *row)
{
    size_t skip = s->input_count + (s->grid.count > 0), i;
    bool again = !isnan(row[EXPLORE_DONE]);
    for (i = 0; i < skip + s->outputs && *at == ','; i++) {
        char *end = NULL;
        bool empty = at[1] == ',' || at[1] == '\0';
        double x = empty ? (double)NAN : strtod(at + 1, &end);
        at = end != NULL ? end : at + 1;
        if (i < skip)
            continue;
        double *to = &row[i - skip];
        if (again && !(x == *to || (isnan(x) && isnan(*to))))
            return false;
        *to = x;
    }
    return i == skip + s->outputs && (at[0] == '\0' || strcmp(at, ",") == 0);
}

static bool read_rows(reading *r)
{
    explore_answer *s = r->answer;
    bool more = r->line[0] != ',' || next_line(r); /* a share may be empty */
    for (; more; more = next_line(r)) {
        char *end;
        if (r->number > explore_rows(s) + 1)
            return complain(r, "the study has no more rows than stand above");
        errno = 0;
        unsigned long row = strtoul(r->line, &end, 10);
        if (errno != 0 || end == r->line || row >= explore_rows(s))
            return complain(r, "no such row in this study");
        if (!read_cells(s, end, explore_row(s, row)))
            return complain(r, "the row is broken, or stands in another file with other results");
    }
    if (r->endless)
        return complain(r, "the line is longer than 1 MiB, or no text");
    return !ferror(r->from) || complain(r, "cannot be read to its end");
}

static bool read_file(reading *r, bool first, const char *plan)
{
    explore_answer other = {0};
    if (first)
        return read_head(r) && begin(r) && read_rows(r);
    explore_answer *into = r->answer;
    r->answer = &other;
    bool good = read_head(r);
    r->answer = into;
    char *own = good ? explore_csv_plan(&other) : NULL;
    if (good && (own == NULL || strcmp(own, plan) != 0 || !has_names(r)))
        good = complain(r, "is of another study than the first file");
    free(own);
    return good && read_rows(r);
}

bool explore_csv_read(explore_answer *s, const char *const paths[], size_t count)
{
    bool good = true;
    char *plan = NULL;
    *s = (explore_answer){0};
    for (size_t i = 0; i < count && good; i++) {
        reading r = {.answer = s, .path = paths[i], .from = fopen(paths[i], "r")};
        if (r.from == NULL && errno == ENOMEM)
            memory_refused();
        if (r.from == NULL) {
            program_complain("could not read '%s': %s", text_plain(paths[i]).text, strerror(errno));
            good = false;
        } else {
            good = read_file(&r, i == 0, plan);
            fclose(r.from);
        }
        if (i == 0 && good)
            plan = explore_csv_plan(s);
        free(r.line);
        free(r.names);
    }
    free(plan);
    return good;
}
