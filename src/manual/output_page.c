/* output_page.c -- boilback-output(5): output.md, with every key of JSON and every column of CSV by their tables. */
#include <stdlib.h>

#include "base/program.h"
#include "manual/pages.h"

#define TOLD_MAX 32

typedef TEXT_OF(160) path;

/* What of a document has been told: the same fields again are told by where they stood. */
typedef struct {
    const field *fields[TOLD_MAX];
    path at[TOLD_MAX];
    size_t count;
} told;

static const path *told_at(const told *t, const field *fields)
{
    for (size_t i = 0; i < t->count; i++)
        if (t->fields[i] == fields)
            return &t->at[i];
    return NULL;
}

static const char *type_word(const field *f)
{
    static const char *const words[] = {
        [FIELD_NUMBER] = "number", [FIELD_COUNT] = "count", [FIELD_BOOL] = "true or false", [FIELD_TEXT] = "text",
        [FIELD_CHARS] = "text",    [FIELD_FIXED] = "text",  [FIELD_WORD] = "word",          [FIELD_NUMBERS] = "numbers",
        [FIELD_OBJECT] = "object", [FIELD_LIST] = "list",   [FIELD_ARRAY] = "list",         [FIELD_MAP] = "objects by name",
        [FIELD_PART] = NULL,       [FIELD_END] = NULL};
    return words[f->kind];
}

static void words(FILE *to, const field *f)
{
    const char *joint = "One of: ";
    for (size_t i = 0; i < f->count; i++) {
        if (f->words[i] == NULL)
            continue;
        fputs(joint, to);
        roff_text(to, f->words[i]);
        joint = ", ";
    }
    fputs(".\n", to);
}

static void entry(FILE *to, const path *at, const field *f)
{
    const char *si_unit = f->kind == FIELD_NUMBER ? field_unit(f->key) : "";
    fputs(".TP\n\\fB", to);
    roff_text(to, at->text);
    fprintf(to, "\\fR (%s%s", type_word(f), si_unit[0] != '\0' ? ", " : "");
    roff_between(to, "", si_unit, ")\n");
    roff_sentence(to, f->meaning);
    if (f->kind == FIELD_WORD)
        words(to, f);
}

/* "loads[].time_s", "outcome.*.a" */
static path inside_of(const path *outer, const field *f)
{
    path p;
    const char *ending = f->kind == FIELD_LIST || f->kind == FIELD_ARRAY ? "[]."
                         : f->kind == FIELD_MAP && f->key != NULL        ? ".*."
                         : f->kind == FIELD_MAP                          ? "*."
                                                                         : ".";
    snprintf(p.text, sizeof p.text, "%.110s%.40s%s", outer->text, f->key != NULL ? f->key : "", ending);
    return p;
}

static void fields_told(FILE *to, const path *outer, const field *fields, told *t);

static void inside_told(FILE *to, const path *outer, const field *f, told *t)
{
    path within = f->kind == FIELD_PART ? *outer : inside_of(outer, f);
    const path *before = told_at(t, f->inside);
    if (before != NULL) {
        roff_between(to, "With the members of\n", before->text, "\n");
        return;
    }
    if (t->count < TOLD_MAX) {
        t->fields[t->count] = f->inside;
        t->at[t->count++] = within;
    }
    fields_told(to, &within, f->inside, t);
}

static void fields_told(FILE *to, const path *outer, const field *fields, told *t)
{
    for (const field *f = fields; f->kind != FIELD_END; f++) {
        path at;
        snprintf(at.text, sizeof at.text, "%.110s%.48s", outer->text, f->key != NULL ? f->key : "*");
        if (f->kind != FIELD_PART)
            entry(to, &at, f);
        if (f->inside != NULL)
            inside_told(to, outer, f, t);
    }
}

static void document_told(FILE *to, const command *c, const document *d)
{
    char heading[120];
    told *t = calloc(1, sizeof *t);
    snprintf(heading, sizeof heading, "%s %s", c->name, d->option);
    roff_subsection(to, heading);
    roff_sentence(to, d->meaning);
    if (t != NULL)
        fields_told(to, &(path){""}, d->fields, t);
    free(t);
}

static void documents(FILE *to, const void *about)
{
    const command *c;
    (void)about;
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        for (const document *d = c->documents; d->option != NULL; d++)
            document_told(to, c, d);
}

void page_output(FILE *to)
{
    static const text_part parts[] = {{"documents", documents}, {0}};
    static const text_page page = {"output", 5, "JSON and CSV that the commands write", parts};
    page_of_text(to, &page, NULL);
    roff_section(to, "SEE ALSO");
    fputs(".BR " PROGRAM_NAME " (1),\n.BR " PROGRAM_NAME "-scenario (5)\n", to);
}
