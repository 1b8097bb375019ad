#include "commands/explore/output.h"

#include <errno.h>
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "base/boil.h"
#include "base/program.h"
#include "base/text.h"

#define FIRST_LINE "# rows of a study, in SI; boilback explore --merge FILE... reads them"

/* Writing --------------------------------------------------------------------------------------------------------- */

static void write_input(const char *kind, const explore_input *i, FILE *to)
{
    const boil_spread *s = &i->spread;
    fprintf(to, "# %s = %s\n#  said = %s\n#  is = %d %d %.17g %.17g %.17g %.17g %zu\n", kind, i->words, i->as_written,
            (int)i->dimension, (int)s->kind, s->low, s->high, s->likely, s->deviation, s->count);
    for (size_t k = 0; k < s->count; k++)
        fprintf(to, "#  value = %.17g\n", s->value[k]);
}

static void write_head(const explore_answer *s, FILE *to)
{
    fprintf(to, FIRST_LINE "\n# version = %s\n# title = %s\n# scenario = %s\n", PROGRAM_VERSION, s->title, s->path);
    fprintf(to, "# start_s = %.17g\n# limit_s = %.17g\n# freeboard_limit_m = %.17g\n", s->start_s, s->limit_s,
            s->freeboard_limit_m);
    fprintf(to, "# plan = %zu %zu %lu\n", s->plan.points, s->plan.replicates, (unsigned long)s->plan.seed);
    if (s->grid.count > 0) {
        write_input("grid", &s->grid.input, to);
        fprintf(to, "#  steps = %zu\n", s->grid.count);
    }
    for (size_t i = 0; i < s->input_count; i++)
        write_input("input", &s->inputs[i], to);
    for (size_t i = 0; i < s->load_count; i++)
        fprintf(to, "# load = %.17g %s\n", s->loads[i].time_s, s->loads[i].words);
}

/* A cell of names; ours hold neither quotes nor commas. */
static void write_names(const explore_answer *s, FILE *to)
{
    fputs("row", to);
    if (s->grid.count > 0)
        fprintf(to, ",%s", s->grid.input.words);
    for (size_t i = 0; i < s->input_count; i++)
        fprintf(to, ",%s", s->inputs[i].words);
    for (size_t i = 0; i < s->outputs; i++)
        fprintf(to, ",%s", explore_output_name(s, i).text);
    fputc('\n', to);
}

static void write_row(const explore_answer *s, size_t row, FILE *to)
{
    double value[BOIL_SAMPLING_INPUTS + 1];
    size_t count = explore_values(s, row, value);
    const double *out = explore_row(s, row);
    fprintf(to, "%zu", row);
    for (size_t i = 0; i < count; i++)
        fprintf(to, ",%.17g", value[i]);
    for (size_t i = 0; i < s->outputs; i++)
        if (isnan(out[i]))
            fputc(',', to);
        else
            fprintf(to, ",%.17g", out[i]);
    fputc('\n', to);
}

void explore_csv_write(const explore_answer *s, FILE *to)
{
    write_head(s, to);
    write_names(s, to);
    for (size_t row = 0; row < explore_rows(s); row++)
        if (explore_made(s, row))
            write_row(s, row, to);
}

/* Reading --------------------------------------------------------------------------------------------------------- */

typedef struct {
    explore_answer *answer;
    const char *path;
    FILE *from;
    char *line;
    size_t capacity, number;
    explore_input *input; /* being described */
} reading;

static bool complain(const reading *r, const char *what)
{
    program_complain("%s:%zu: %s", text_plain(r->path).text, r->number, what);
    return false;
}

static bool next_line(reading *r)
{
    ssize_t length = getline(&r->line, &r->capacity, r->from);
    if (length <= 0)
        return false;
    r->number++;
    if (r->line[length - 1] == '\n')
        r->line[length - 1] = '\0';
    return true;
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

static bool read_value(explore_input *i, const char *text)
{
    if (i->spread.count == BOIL_SPREAD_VALUES)
        return false;
    i->spread.value[i->spread.count++] = strtod(text, NULL);
    return true;
}

static bool is(const char *name, size_t length, const char *word)
{
    return strlen(word) == length && memcmp(name, word, length) == 0;
}

/* "# name = value": what of it is known goes into the study. */
static bool read_fact(reading *r, const char *name, size_t length, const char *value)
{
    explore_answer *s = r->answer;
    if (is(name, length, "title"))
        return copy(s->title, sizeof s->title, value);
    if (is(name, length, "scenario"))
        return copy(s->path, sizeof s->path, value);
    if (is(name, length, "version"))
        return strcmp(value, PROGRAM_VERSION) == 0;
    if (is(name, length, "plan"))
        return read_plan(s, value);
    if (is(name, length, "grid") || is(name, length, "input"))
        return read_input(r, is(name, length, "grid"), value);
    if (is(name, length, "load"))
        return read_load(s, value);
    if (is(name, length, "steps"))
        return sscanf(value, "%zu", &s->grid.count) == 1 && s->grid.count >= 1 && s->grid.count <= EXPLORE_GRID_MAX;
    if (is(name, length, "start_s") || is(name, length, "limit_s") || is(name, length, "freeboard_limit_m")) {
        double x = strtod(value, NULL);
        *(name[0] == 's' ? &s->start_s : name[0] == 'l' ? &s->limit_s : &s->freeboard_limit_m) = x;
        return true;
    }
    if (r->input == NULL)
        return false;
    return is(name, length, "said")    ? copy(r->input->as_written, sizeof r->input->as_written, value)
           : is(name, length, "is")    ? read_spread(r->input, value)
           : is(name, length, "value") ? read_value(r->input, value)
                                       : false;
}

static bool read_head(reading *r)
{
    if (!next_line(r) || strcmp(r->line, FIRST_LINE) != 0)
        return complain(r, "is no file of rows of a study");
    while (next_line(r) && r->line[0] == '#') {
        const char *name = r->line + 1 + strspn(r->line + 1, " "), *equals = strstr(name, " = ");
        if (equals == NULL || !read_fact(r, name, (size_t)(equals - name), equals + 3))
            return complain(r, "this line is no part of a study of version " PROGRAM_VERSION);
    }
    return strncmp(r->line, "row,", 4) == 0 || complain(r, "the names of the columns are missing");
}

/* The plan as it would be written again: equal heads mean the same study. */
static char *head_of(const explore_answer *s)
{
    char *text = NULL;
    size_t size = 0;
    FILE *to = open_memstream(&text, &size);
    if (to == NULL)
        return NULL;
    write_head(s, to);
    write_names(s, to);
    return fclose(to) == 0 ? text : NULL;
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
    if (explore_begin(s) != BOIL_OK)
        return complain(r, "the study is too large for memory");
    char *own = head_of(s);
    size_t length = own != NULL ? strlen(own) : 0, names = strlen(r->line);
    bool same = length > names && memcmp(own + length - 1 - names, r->line, names) == 0;
    free(own);
    return same || complain(r, "the columns are not those of version " PROGRAM_VERSION);
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
    return i == skip + s->outputs && *at == '\0';
}

static bool read_rows(reading *r)
{
    explore_answer *s = r->answer;
    while (next_line(r)) {
        char *end;
        errno = 0;
        unsigned long row = strtoul(r->line, &end, 10);
        if (errno != 0 || end == r->line || row >= explore_rows(s))
            return complain(r, "no such row in this study");
        if (!read_cells(s, end, explore_row(s, row)))
            return complain(r, "the row is broken, or stands in another file with other results");
    }
    return !ferror(r->from) || complain(r, "cannot be read to its end");
}

static bool read_file(reading *r, bool first, const char *head)
{
    explore_answer other = {0};
    if (first)
        return read_head(r) && begin(r) && read_rows(r);
    explore_answer *into = r->answer;
    r->answer = &other;
    bool good = read_head(r);
    r->answer = into;
    other.plan.inputs = other.input_count;
    other.findings = into->findings;
    other.outputs = into->outputs;
    char *own = good ? head_of(&other) : NULL;
    if (good && (own == NULL || strcmp(own, head) != 0))
        good = complain(r, "is of another study than the first file");
    free(own);
    return good && read_rows(r);
}

bool explore_csv_read(explore_answer *s, const char *const paths[], size_t count)
{
    bool good = true;
    char *head = NULL;
    *s = (explore_answer){0};
    for (size_t i = 0; i < count && good; i++) {
        reading r = {.answer = s, .path = paths[i], .from = fopen(paths[i], "r")};
        if (r.from == NULL) {
            program_complain("could not read '%s': %s", text_plain(paths[i]).text, strerror(errno));
            good = false;
        } else {
            good = read_file(&r, i == 0, head);
            fclose(r.from);
        }
        if (i == 0 && good)
            head = head_of(s);
        free(r.line);
    }
    free(head);
    return good;
}
