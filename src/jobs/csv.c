#include "jobs/jobs.h"

#include <string.h>

#include "base/words.h"
#include "jobs/text.h"

enum {
    NAME,
    MASS,
    SHAPE,
    SIZE,
    WALL,
    PIECES,
    MATERIAL,
    MINUTES,
    AT_MOST,
    EARLIEST,
    DUE,
    PRIORITY,
    BASKET,
    SPLIT,
    SHARE,
    TEMPERATURE,
    PACKED,
    COLUMNS
};

/* Columns of a unit have a dimension; DIM_COUNT: they have none. */
static const struct {
    job_column say;
    unit_dimension dimension;
    const char *units; /* such as are asked for */
} columns[COLUMNS] = {
    [NAME] = {{"name", NULL, "of the job", true}, DIM_COUNT, NULL},
    [MASS] = {{"mass", "lb", "of all its pieces", true}, DIM_MASS, "'mass [lb]' or 'mass [kg]'"},
    [SHAPE] = {{"shape", NULL, "plate, bar, ball or tube", true}, DIM_COUNT, NULL},
    [SIZE] = {{"size", "in", "thickness or diameter", true}, DIM_LENGTH, "'size [in]' or 'size [mm]'"},
    [WALL] = {{"wall", "in", "of a tube", false}, DIM_LENGTH, "'wall [in]' or 'wall [mm]'"},
    [PIECES] = {{"pieces", NULL, "how many", false}, DIM_COUNT, NULL},
    [MATERIAL] = {{"material", NULL, "steel, or iron", false}, DIM_COUNT, NULL},
    [MINUTES] = {{"minutes", "min", "that it hangs once it is hot, at the least", true}, DIM_TIME, "'minutes [min]'"},
    [AT_MOST] = {{"at most", "min", "the same, at the most", false}, DIM_TIME, "'at most [min]'"},
    [EARLIEST] = {{"earliest", "clock", "it does not go in before", false}, DIM_COUNT, NULL},
    [DUE] = {{"due", "clock", "it is lifted by then", false}, DIM_COUNT, NULL},
    [PRIORITY] = {{"priority", NULL, "must, normal or low", false}, DIM_COUNT, NULL},
    [BASKET] = {{"basket", "lb", "each", false}, DIM_MASS, "'basket [lb]' or 'basket [kg]'"},
    [SPLIT] = {{"split", NULL, "yes: it may hang in several baskets", false}, DIM_COUNT, NULL},
    [SHARE] = {{"share", NULL, "yes: it may go in with another", false}, DIM_COUNT, NULL},
    [TEMPERATURE] = {{"temperature", "degF", "as it comes", false}, DIM_TEMPERATURE, "'temperature [degF]'"},
    [PACKED] = {{"packed", "in", "depth of a dense pack", false}, DIM_LENGTH, "'packed [in]' or 'packed [mm]'"},
};

job_column job_column_listed(size_t index)
{
    return index < COLUMNS ? columns[index].say : (job_column){NULL, NULL, NULL, false};
}

/* The header: which column stands where, and its unit. */
typedef struct {
    int column[COLUMNS];
    size_t count;
    size_t line;
    struct {
        bool there, complained;
        const char *at; /* in the header */
        char unit[24];  /* "" where its cells have their own */
    } of[COLUMNS];
} header;

static bool is_blank(const cursor *cell)
{
    return cell->at == cell->end;
}

/* What lists call some of them. */
static const char *column_meant(const char *name, size_t length)
{
    static const struct {
        const char *word, *column;
    } others[] = {{"weight", "mass"},    {"thickness", "size"},  {"diameter", "size"}, {"job", "name"},
                  {"part", "name"},      {"quantity", "pieces"}, {"qty", "pieces"},    {"time", "minutes"},
                  {"metal", "material"}, {"deadline", "due"}};
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++)
        if (words_same(name, length, others[i].word))
            return others[i].column;
    return NULL;
}

static int column_named(const cursor *cell, const char *name, size_t length)
{
    words_nearest n = words_near(name, length);
    for (int i = 0; i < COLUMNS; i++) {
        if (words_same(name, length, columns[i].say.name))
            return i;
        words_consider(&n, columns[i].say.name);
    }
    const char *meant = column_meant(name, length);
    if (meant != NULL)
        cursor_error(cell, name, "unknown column '%s': write '%s'", words_quoted(name, length).text, meant);
    else
        cursor_error(cell, name, "unknown column '%s'%s", words_quoted(name, length).text, words_suggestion(&n).text);
    return -1;
}

/* What stands between the brackets. */
static bool read_unit(const cursor *cell, const char *at, const char *end, int column, header *h)
{
    size_t length = (size_t)(end - at), used = 0;
    unit_dimension d = columns[column].dimension;
    bool clock = columns[column].say.unit != NULL && d == DIM_COUNT;
    if (clock ? words_same(at, length, "clock") : d == DIM_COUNT)
        return clock || cursor_error(cell, at, "'%s' has no unit", columns[column].say.name);
    if (clock)
        return cursor_error(cell, at, "'%s' is a clock: '%s [clock]'", columns[column].say.name, columns[column].say.name);
    if (length >= sizeof h->of[column].unit || unit_scan(UNIT_OF(d), at, length, &used) == NULL || used != length)
        return cursor_error(cell, at, "'%s' is no unit of '%s': write %s", words_quoted(at, length).text,
                            columns[column].say.name, columns[column].units);
    memcpy(h->of[column].unit, at, length);
    h->of[column].unit[length] = '\0';
    return true;
}

/* "mass [lb]" */
static bool read_title(const cursor *cell, header *h)
{
    const char *open = memchr(cell->at, '[', (size_t)(cell->end - cell->at));
    const char *name_end = words_trim(cell->at, open != NULL ? open : cell->end);
    const char *close = open != NULL ? memchr(open, ']', (size_t)(cell->end - open)) : NULL;
    int i = column_named(cell, cell->at, (size_t)(name_end - cell->at));
    if (i < 0)
        return false;
    if (h->of[i].there)
        return cursor_error(cell, cell->at, "column '%s' a second time", columns[i].say.name);
    h->of[i].there = true;
    h->of[i].at = cell->at;
    h->column[h->count++] = i;
    if (open != NULL && close == NULL)
        return cursor_error(cell, cell->end, "a unit ends with ']'");
    return open == NULL || read_unit(cell, words_skip(open + 1, close), words_trim(open + 1, close), i, h);
}

static bool read_header(cursor row, header *h)
{
    const cursor start = row;
    bool good = true;
    cursor cell;
    size_t length = (size_t)(row.end - row.at);
    if (memchr(row.at, ',', length) == NULL && (memchr(row.at, ';', length) != NULL || memchr(row.at, '\t', length) != NULL))
        return cursor_error(&row, row.at, "%s between cells: save with commas (decimal commas are not read either)",
                            memchr(row.at, ';', length) != NULL ? "semicolons" : "tabs");
    h->line = row.line;
    while (row.at < row.end) {
        if (!csv_cell(&row, ',', &cell))
            return false;
        good = read_title(&cell, h) && good;
    }
    for (int i = 0; i < COLUMNS; i++)
        if (columns[i].say.needed && !h->of[i].there)
            good = cursor_error(&start, start.at, "a column '%s' is missing", columns[i].say.name);
    return good;
}

/* The number of a cell and its unit, wherever that stands. False, with a message. */
static bool add_measured(job_text *t, const cursor *cell, int column, header *h)
{
    const char *measure = h->of[column].unit, *end = cell->end;
    bool own = end > cell->at && !((end[-1] >= '0' && end[-1] <= '9') || end[-1] == '.');
    if (own && measure[0] != '\0')
        return cursor_error(cell, cell->at, "'%s' in a column of %s: one unit a column",
                            words_quoted(cell->at, (size_t)(end - cell->at)).text, measure);
    if (!own && measure[0] == '\0' && h->of[column].complained)
        return false;
    if (!own && measure[0] == '\0') {
        h->of[column].complained = true;
        return messages_add(cell->messages, cell->source, h->line, h->of[column].at, "'%s' has no unit: %s",
                            columns[column].say.name, columns[column].units);
    }
    job_text_add(t, cell->at, end);
    if (measure[0] != '\0') {
        job_text_say(t, " ", cell->at);
        job_text_say(t, measure, cell->at);
    }
    return true;
}

/* A clause of the load, where the cell holds anything. */
static bool add_clause(job_text *t, const cursor cells[], int column, const char *words, header *h)
{
    const cursor *cell = &cells[column];
    if (is_blank(cell))
        return true;
    job_text_say(t, words, cell->at);
    if (columns[column].dimension != DIM_COUNT)
        return add_measured(t, cell, column, h);
    job_text_add(t, cell->at, cell->end);
    return true;
}

/* "load 190 lb steel, plate 1/4 in, 38 pieces, basket 12 lb, at 75 degF" */
static bool load_words(job_text *t, const cursor cells[], header *h)
{
    bool good = add_clause(t, cells, MASS, "load ", h);
    good = add_clause(t, cells, MATERIAL, " ", h) && good;
    good = add_clause(t, cells, SHAPE, ", ", h) && good;
    good = add_clause(t, cells, SIZE, " ", h) && good;
    good = add_clause(t, cells, WALL, " wall ", h) && good;
    good = add_clause(t, cells, PIECES, ", ", h) && good;
    if (!is_blank(&cells[PIECES]))
        job_text_say(t, " pieces", cells[PIECES].at);
    good = add_clause(t, cells, BASKET, ", basket ", h) && good;
    good = add_clause(t, cells, PACKED, ", packed ", h) && good;
    return add_clause(t, cells, TEMPERATURE, ", at ", h) && good;
}

static bool read_time(const cursor cells[], int column, header *h, quantity *q)
{
    job_text t = job_text_begin(cells[column].at);
    cursor c;
    if (is_blank(&cells[column]))
        return true;
    return add_measured(&t, &cells[column], column, h) && job_text_cursor(&t, &cells[column], &c) &&
           quantity_read(&c, columns[column].say.name, UNIT_OF(DIM_TIME), q) && cursor_expect_end(&c) &&
           quantity_within(&c, columns[column].say.name, q, &job_stay_bounds);
}

static bool read_moment(const job_reader *r, const cursor cells[], int column, quantity *q)
{
    cursor c = cells[column];
    return is_blank(&c) || job_moment_read(r, &c, columns[column].say.name, q);
}

/* One of some words, by number; the first where the cell is empty. */
static bool read_word(const cursor cells[], int column, const char *const words[], unsigned *which)
{
    const cursor *c = &cells[column];
    char known[60] = "";
    *which = 0;
    for (unsigned i = 0; words[i] != NULL; i++) {
        TEXT_ADD(known, "%s'%s'", i == 0 ? "" : words[i + 1] != NULL ? ", " : " or ", words[i]);
        if (is_blank(c) || words_same(c->at, (size_t)(c->end - c->at), words[i])) {
            *which = i;
            return true;
        }
    }
    return cursor_error(c, c->at, "'%s' is %s, not '%s'", columns[column].say.name, known,
                        words_quoted(c->at, (size_t)(c->end - c->at)).text);
}

static bool read_said(const job_reader *r, const cursor cells[], header *h, job_said *said)
{
    static const char *const yes[] = {"no", "yes", NULL};
    unsigned priority, split, share;
    *said = (job_said){.name_at = cells[NAME].at, .name_length = (size_t)(cells[NAME].end - cells[NAME].at)};
    bool good = read_time(cells, MINUTES, h, &said->least);
    good = read_time(cells, AT_MOST, h, &said->most) && good;
    good = read_moment(r, cells, EARLIEST, &said->from) && good;
    good = read_moment(r, cells, DUE, &said->due) && good;
    good = read_word(cells, PRIORITY, job_priorities, &priority) && good;
    good = read_word(cells, SPLIT, yes, &split) && good;
    good = read_word(cells, SHARE, yes, &share) && good;
    if (!good)
        return false;
    said->priority = (boil_plan_priority)priority;
    said->may_split = split == 1;
    said->may_share = share == 1;
    return true;
}

/* The cells by column; those of columns that are not there, and of cells left out at the end of a row, are empty. */
static bool read_cells(cursor *row, const header *h, cursor cells[])
{
    cursor cell;
    for (int i = 0; i < COLUMNS; i++) {
        cells[i] = *row;
        cells[i].end = cells[i].at;
    }
    for (size_t i = 0; row->at < row->end; i++) {
        if (!csv_cell(row, ',', &cell))
            return false;
        if (i >= h->count && !is_blank(&cell))
            return cursor_error(&cell, cell.at, "this row has more cells than the header has columns");
        if (i < h->count)
            cells[h->column[i]] = cell;
    }
    return true;
}

static bool has_needed(const cursor *row, const cursor cells[])
{
    bool good = true;
    for (int i = 0; i < COLUMNS; i++)
        if (columns[i].say.needed && is_blank(&cells[i]))
            good = cursor_error(row, cells[i].at, "empty cell '%s'", columns[i].say.name);
    return good;
}

static void read_row(const job_reader *r, cursor row, header *h)
{
    const cursor place = row;
    cursor cells[COLUMNS];
    job_said said;
    job_text load = job_text_begin(row.at);
    if (!read_cells(&row, h, cells) || !has_needed(&place, cells))
        return;
    bool good = load_words(&load, cells, h);
    if (read_said(r, cells, h, &said) && good)
        job_finish(r, &place, &load, &said);
}

bool jobs_is_header(const cursor *row)
{
    cursor rest = *row, cell;
    size_t known = 0;
    rest.messages = NULL;
    while (rest.at < rest.end && csv_cell(&rest, ',', &cell)) {
        const char *open = memchr(cell.at, '[', (size_t)(cell.end - cell.at));
        size_t length = (size_t)(words_trim(cell.at, open != NULL ? open : cell.end) - cell.at);
        for (int i = 0; i < COLUMNS; i++)
            known += words_same(cell.at, length, columns[i].say.name);
    }
    return known >= 3;
}

void jobs_read_csv(const job_reader *r, const source *s, messages *m)
{
    header h = {.count = 0};
    for (size_t line = 1; line <= s->count && !messages_full(m); line++) {
        cursor row = csv_row(s, line, m);
        if (csv_is_blank(&row))
            continue;
        if (h.count > 0)
            read_row(r, row, &h);
        else if (!read_header(row, &h))
            return;
    }
    if (h.count == 0)
        messages_add(m, s, 1, s->lines[0].text,
                     "no jobs: a list starts with a header such as 'name,mass [lb],shape,size [in],minutes [min]'");
}
