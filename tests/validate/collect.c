/* validate/collect.c -- all tables, row by row, with what the model gives. */
#include "validate/validate.h"

#include "support/pins.h"

const char *validate_group(size_t index)
{
    static const char *const names[] = {"water and steam",  "solution",   "heats",  "conduction", "convection",
                                        "evaporation",      "swell",      "mixing", "layer",      "whole-bath rates",
                                        "whole-bath times", "trade facts"};
    return index < COUNT(names) ? names[index] : NULL;
}

static const validate_quantity *quantity_of(const validate_table *table, published *row)
{
    for (size_t i = 0; i < table->count; i++) {
        const char *name = table->quantities[i].quantity;
        if (name == NULL || strcmp(published_text(row, "quantity"), name) == 0)
            return &table->quantities[i];
    }
    fail_msg("%s:%d: no such quantity: %s", row->path, row->line_number, published_text(row, "quantity"));
    return NULL;
}

static bool has_column(published *row, const char *column)
{
    for (int i = 0; i < row->columns.count; i++)
        if (strcmp(row->columns.field[i], column) == 0)
            return true;
    return false;
}

#define PUT(field, text) snprintf((field), sizeof(field), "%s", (text))

static void read_words(const validate_table *table, const validate_quantity *quantity, published *row, validate_row *r)
{
    const char *file = strrchr(table->path, '/') + 1;
    snprintf(r->table, sizeof r->table, "%.*s", (int)strcspn(file, "."), file);
    PUT(r->group, quantity->group != NULL ? quantity->group : published_text(row, "group"));
    PUT(r->id, published_text(row, "id"));
    PUT(r->unit, quantity->unit != NULL ? quantity->unit : published_text(row, "unit"));
    PUT(r->kind, published_text(row, "kind"));
    PUT(r->source, published_text(row, "source"));
    PUT(r->reason, has_column(row, "outside") ? published_text(row, "outside") : "");
    r->status = published_text(row, "status")[0];
    validate_label(quantity->label, row, r->what, sizeof r->what);
    validate_work_of(r->source, r->work, sizeof r->work);
}

/* Where the row is pinned, the pin says why it lies outside. */
static void read_pin(validate_row *r)
{
    const pin p = pin_of(r->table, r->id);
    r->pinned = p.found;
    r->astray = p.found && !(r->deviation >= p.low && r->deviation <= p.high);
    if (p.found)
        PUT(r->reason, p.because);
}

static validate_row work_out(const validate_table *table, published *row)
{
    validate_row r = {.value = published_number(row, "value"), .band = published_number(row, "band")};
    const validate_quantity *quantity = quantity_of(table, row);
    read_words(table, quantity, row, &r);
    r.ours = quantity->of != NULL ? evidence_of(quantity->of(row)) : quantity->estimates(row);
    r.deviation = evidence_deviation(r.kind, r.value, r.ours);
    r.distance = evidence_distance(r.kind, r.value, r.band, r.ours);
    read_pin(&r);
    return r;
}

static void add(validate_answer *answer, const validate_row *r)
{
    answer->rows = realloc(answer->rows, (answer->count + 1) * sizeof *answer->rows);
    assert_non_null(answer->rows);
    answer->rows[answer->count++] = *r;
}

static void collect_list(validate_answer *answer, validate_list list)
{
    for (size_t i = 0; i < list.count; i++) {
        published *table = published_open(list.tables[i].path);
        while (published_next(table)) {
            const validate_row r = work_out(&list.tables[i], table);
            add(answer, &r);
        }
        published_close(table);
    }
}

void validate_collect(validate_answer *answer)
{
    collect_list(answer, validate_water());
    collect_list(answer, validate_solution());
    collect_list(answer, validate_mixture());
    collect_list(answer, validate_heats());
    collect_list(answer, validate_single_heats());
    collect_list(answer, validate_conduction());
    collect_list(answer, validate_convection());
    collect_list(answer, validate_evaporation());
    collect_list(answer, validate_pool());
    collect_list(answer, validate_whole_bath());
    collect_list(answer, validate_facts());
}
