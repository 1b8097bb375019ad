#include "commands/explore/answer.h"
#include "describe/report.h"

/* One step of the grid, or the whole study without one. */
typedef struct {
    const explore_answer *of;
    size_t cell;
} part;

/* Findings and percentiles, or indices, are told of these. */
static bool is_told(const explore_answer *s, size_t column)
{
    return column >= EXPLORE_SLOWEST_S && !(column >= EXPLORE_FIXED && column < EXPLORE_FIXED + s->findings);
}

/* clang-format off */
#define RECORD boil_odds
static const field odds[] = {ODDS(), FIELDS_END};
#undef RECORD

#define RECORD explore_finding
static const field finding[] = {
    TEXT("id", id, "a name that stays"), WORD("severity", gravest, document_severities, "gravest signal word it had"),
    ODDS(odds.), FIELDS_END};
#undef RECORD
/* clang-format on */

static void all_back(json *j, const char *name, const void *record)
{
    const part *p = record;
    boil_odds back = explore_odds(p->of, p->cell, EXPLORE_BACK_SHARE, 1);
    json_record(j, name, odds, &back);
}

static void findings(json *j, const char *name, const void *record)
{
    const part *p = record;
    explore_finding found[EXPLORE_FINDINGS_MAX];
    json_records(j, name, finding, found, explore_findings_of(p->of, p->cell, found), sizeof found[0]);
}

typedef struct {
    double p5, p25, p50, p75, p95;
    size_t never;
} percentiles;

/* clang-format off */
#define RECORD percentiles
static const field percentile_fields[] = {
    SAME(p5, "5 % of the draws lie below; null: it did not happen that often"), SAME(p25, "25 % below"),
    SAME(p50, "the median"), SAME(p75, "75 % below"), SAME(p95, "95 % below"),
    COUNT("never", never, "draws in which it did not happen; they count as later than all"), FIELDS_END};
#undef RECORD
/* clang-format on */

static void percentiles_of(json *j, const char *name, const void *record)
{
    const part *p = record;
    json_object(j, name);
    for (size_t column = 0; column < p->of->outputs; column++) {
        if (!is_told(p->of, column))
            continue;
        explore_spread s = explore_spread_of(p->of, p->cell, column);
        percentiles x = {explore_spread_at(&s, 0.05), explore_spread_at(&s, 0.25), explore_spread_at(&s, 0.5),
                         explore_spread_at(&s, 0.75), explore_spread_at(&s, 0.95), s.never};
        json_record(j, explore_output_name(p->of, column).text, percentile_fields, &x);
        explore_spread_free(&s);
    }
    json_close(j);
}

/* clang-format off */
TELLS(double, grid_value, part, explore_grid_value(r->of, r->cell))
TELLS(bool, has_grid, part, r->of->grid.count > 0)
static const field step[] = {
    WORKED_OUT("value", grid_value, "of the number stepped over, in SI; only with --grid"), FIELDS_END};

static const field cell[] = {
    PART_IF(step, has_grid),
    GIVEN(FIELD_OBJECT, "all_loads_back", odds, all_back, "all loads have the boil back within the limit"),
    GIVEN(FIELD_LIST, "findings", finding, findings, "found at least once, gravest first"),
    GIVEN(FIELD_MAP, "percentiles", percentile_fields, percentiles_of, "of each result of a run, named as in the CSV, in SI"),
    FIELDS_END};
/* clang-format on */

static void cells(json *j, const char *name, const void *record)
{
    part p = {record, 0};
    json_list(j, name);
    for (; p.cell < explore_cells(record); p.cell++)
        json_record(j, NULL, cell, &p);
    json_close(j);
}

typedef struct {
    const explore_answer *of;
    boil_sensitivity found;
} causes;

typedef struct {
    boil_estimate first, total;
} share;

TELLS(double, share_value, boil_estimate, explore_share_of(r).value)
TELLS(double, share_low, boil_estimate, explore_share_of(r).low)
TELLS(double, share_high, boil_estimate, explore_share_of(r).high)

/* clang-format off */
static const field estimate[] = {
    WORKED_OUT("value", share_value, "share of the variance, 0 to 1; null: it never varies"),
    WORKED_OUT("low", share_low, "lower end of its 95 % interval, as far as it lies within 0 to 1"),
    WORKED_OUT("high", share_high, "its upper end, likewise"), FIELDS_END};

#define RECORD share
static const field share_fields[] = {
    OBJECT("first", first, estimate, "what the input does alone"),
    OBJECT("total", total, estimate, "with all that it does together with others"), FIELDS_END};
#undef RECORD
/* clang-format on */

static void shares(json *j, const char *name, const void *record)
{
    const causes *c = record;
    (void)name;
    for (size_t i = 0; i < c->of->input_count; i++)
        json_record(j, c->of->inputs[i].words, share_fields, &(share){c->found.first[i], c->found.total[i]});
}

/* clang-format off */
#define RECORD causes
static const field cause_fields[] = {
    COUNT("points", found.points, "complete points they were made of"),
    GIVEN(FIELD_MAP, NULL, share_fields, shares, "each input, by its name"), FIELDS_END};
#undef RECORD
/* clang-format on */

static void indices(json *j, const char *name, const void *record)
{
    const explore_answer *s = record;
    json_object(j, name);
    for (size_t column = 0; column < s->outputs; column++) {
        if (!is_told(s, column))
            continue;
        causes c = {s, explore_sensitivity(s, column)};
        json_record(j, explore_output_name(s, column).text, cause_fields, &c);
    }
    json_close(j);
}

/* clang-format off */
WRITES(made, explore_answer, number, (double)explore_count(r, true))
WRITES(planned, explore_answer, number, (double)explore_count(r, false))
WRITES(seed, explore_answer, number, (double)r->plan.seed)
WRITES(central_only, explore_answer, bool, !explore_varies_mixing(r))
WRITES(grid, explore_answer, text, r->grid.count > 0 ? r->grid.input.words : NULL)
TELLS(bool, has_indices, explore_answer, r->grid.count == 0 && r->input_count > 0)

#define RECORD explore_input
static const field input[] = {
    CHARS("name", words, "the setting, or the law's number"), CHARS("spread", as_written, "how it varies, as written"),
    FIELDS_END};
#undef RECORD

#define RECORD explore_answer
static const field causes_told[] = {
    GIVEN(FIELD_MAP, "indices", cause_fields, indices, "how much of the variance of each result comes of each input"),
    FIELDS_END};

static const field answer[] = {
    VERSION_FIELD, CHARS("scenario", path, "the file, as it was named"), CHARS("title", title, "title of the scenario"),
    GIVEN(FIELD_COUNT, "runs", NULL, made, "runs made"),
    GIVEN(FIELD_COUNT, "runs_planned", NULL, planned, "runs that the study needs"),
    GIVEN(FIELD_COUNT, "seed", NULL, seed, "of the random shifts"),
    GIVEN(FIELD_BOOL, "central_mixing_only", NULL, central_only, "the mixing time does not vary: no graver mixing in it"),
    GIVEN(FIELD_TEXT, "grid", NULL, grid, "the number stepped over; null: none"),
    ARRAY("inputs", inputs, input_count, input, "what varies"),
    GIVEN(FIELD_LIST, "cells", cell, cells, "the study, or each step of its grid"), PART_IF(causes_told, has_indices),
    FIELDS_END};
/* clang-format on */

const document explore_documents[] = {
    {"--json", "what the study says", answer, false}, {"--csv", "its rows, a run a line", explore_csv_fields, true}, {0}};
