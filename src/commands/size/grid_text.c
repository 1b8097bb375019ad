/* grid_text.c -- the heat over two numbers, in words and for other programs. */
#include <math.h>
#include <string.h>

#include "commands/size/grid.h"
#include "describe/report.h"

typedef double figure(const size_grid_cell *c);

static double heat(const size_grid_cell *c)
{
    return c->heat_W;
}

static double calm(const size_grid_cell *c)
{
    return c->calm_W;
}

static double rim(const size_grid_cell *c)
{
    return c->rim_m;
}

static double level(const size_grid_cell *c)
{
    return c->level_m;
}

/* "60.0", without the unit, which the verdict says; of a share or a factor "0.6". */
static formatted_text value_words(const uncertain_grid *g, size_t step, unit_system s)
{
    formatted_text t;
    if (g->over.thing.dimension < DIM_COUNT)
        return format_number(s, g->over.thing.dimension, size_grid_value(g, step));
    snprintf(t.text, sizeof t.text, "%.4g", size_grid_value(g, step));
    return t;
}

/* "tank level, in". */
static formatted_text name_words(const uncertain_grid *g, unit_system s)
{
    formatted_text t = {""};
    TEXT_ADD(t.text, "%.40s", g->over.thing.words);
    if (g->over.thing.dimension < DIM_COUNT)
        TEXT_ADD(t.text, ", %.12s", format_unit(s, g->over.thing.dimension));
    return t;
}

static void table(const size_grid *a, const char *name, figure *of, unit_dimension d, unit_system s, FILE *to)
{
    const uncertain_grid *down = a->question->down, *across = a->question->across;
    fprintf(to, "\n%s, %s\n %-12s", name, format_unit(s, d), "");
    for (size_t k = 0; k < across->steps; k++)
        fprintf(to, " %9.9s ", value_words(across, k, s).text);
    for (size_t i = 0; i < down->steps; i++) {
        fprintf(to, "\n %-12.12s", value_words(down, i, s).text);
        for (size_t k = 0; k < across->steps; k++) {
            const size_grid_cell *c = &a->cells[i * across->steps + k];
            char mark = c->refused || isnan(c->heat_W) || c->holds ? ' ' : '*';
            fprintf(to, " %9s%c", c->refused ? "x" : size_number_up(s, d, of(c)).text, mark);
        }
    }
    fputc('\n', to);
}

static bool is_level(const uncertain_grid *g)
{
    return strcmp(g->over.thing.words, "tank level") == 0;
}

void size_grid_report(const void *answer, const output *o, FILE *to)
{
    const size_grid *a = answer;
    const size_grid_question *q = a->question;
    report_verdict(to, "Heat to the tank; down: %s; across: %s", name_words(q->down, o->system).text,
                   name_words(q->across, o->system).text);
    report_title(to, a->scenario->title);
    if (q->same_volume)
        report_paragraph(to, "the bath's volume kept, %s, and the rim as far above it",
                         SHOWN(o->system, VOLUME, boil_tank_area(&a->scenario->plant.tank) * a->scenario->plant.tank.level_m));
    table(a, "Smallest heat that brings every boil back in time", heat, DIM_POWER, o->system, to);
    table(a, "Calm losses", calm, DIM_POWER, o->system, to);
    table(a, "Least depth of the tank that leaves the freeboard", rim, DIM_LENGTH, o->system, to);
    if (q->same_volume && !is_level(q->down) && !is_level(q->across))
        table(a, "Level", level, DIM_LENGTH, o->system, to);
    fputc('\n', to);
    report_paragraph(to,
                     "A star: with that heat it does not hold, as less freeboard is left than is asked for, or the bath leaves "
                     "its band. A dash: no heat does. x: there is no such case; 'check' says why.");
    report_caution(to);
}

/* clang-format off */
WRITES(down_words, size_grid, text, r->question->down->over.thing.words)
WRITES(across_words, size_grid, text, r->question->across->over.thing.words)

#define RECORD size_grid_cell
const field size_grid_cell_fields[] = {
    SAME(down, "the first number, in SI"), SAME(across, "the second"),
    BOOL("refused", refused, "there is no such case"), SAME(level_m, "its level"), NUMBER("bath_m3", volume_m3, "its still bath"),
    SAME(heat_W, "heat to the tank that brings every boil back in time; null or empty: none does"), SAME(calm_W, "calm losses"),
    SAME(rim_m, "least depth of the tank that leaves the freeboard"), BOOL("holds", holds, "whether it holds with that heat"), FIELDS_END};
#undef RECORD

#define RECORD size_grid
const field size_grid_fields[] = {
    VERSION_FIELD, GIVEN(FIELD_TEXT, "down", NULL, down_words, "the number that varies from line to line"),
    GIVEN(FIELD_TEXT, "across", NULL, across_words, "the number that varies along a line"),
    ARRAY("grid", cells, count, size_grid_cell_fields, "a pair of values each"), FIELDS_END};
#undef RECORD
/* clang-format on */

void size_grid_csv(const void *answer, FILE *to)
{
    const size_grid *a = answer;
    csv_document(to, size_grid_cell_fields, a->cells, a->count, sizeof a->cells[0]);
}
