/* cli/output.h -- how every command hands out its answer: the report or JSON on standard output, rows, picture and page into
   files. A command gives its writers in a table, and its options as rows of its own table. */
#ifndef CLI_OUTPUT_H
#define CLI_OUTPUT_H

#include "base/field.h"
#include "base/format.h"
#include "cli/options.h"
#include "pictures/picture.h"

/* The option --plot, the same for every command that has it. */

typedef struct {
    const char *path; /* NULL: not asked for */
    picture_format format;
    bool impossible; /* said so before the work */
} plot;

/* Where it goes: a part of a command's record. A file's name NULL: not asked for; "-": standard output, instead of the
   report. */
typedef struct {
    bool json;
    const char *csv, *html;
    const char *write; /* a scenario that the answer amounts to; written by the command itself */
    plot plot;
    unit_system system;
    bool colour, verbose, full, brief; /* of the report */
    bool sheet_anywhere;               /* of what is read: the run sheet need not lie beside its scenario */
} output;

/* Rows of a table of options; `record`: the command's, with an output of that name in it. */
/* clang-format off */
#define OUTPUT_JSON(record, text) {"json", NULL, text, OPTION_FLAG, .where = offsetof(record, output.json)}
#define OUTPUT_CSV(record, text) {"csv", "FILE", text, OPTION_FILE, .where = offsetof(record, output.csv)}
#define OUTPUT_PLOT(record, text) {"plot", "FILE", text, OPTION_FILE, .where = offsetof(record, output.plot.path)}
#define OUTPUT_PLOT_INSTEAD(record, does) \
    OUTPUT_PLOT(record, does " with gnuplot: a .svg, .png or .pdf; '-' draws in the terminal instead of the report")
#define OUTPUT_HTML(record, text) {"html", "FILE", text, OPTION_FILE, .where = offsetof(record, output.html)}
#define INPUT_SHEET(record) \
    {"sheet-anywhere", NULL, "read a run sheet also where it does not lie in the scenario's folder or below it", OPTION_FLAG, \
     .where = offsetof(record, output.sheet_anywhere)}
#define OUTPUT_UNITS(record, of) \
    {"units", "us|si", "units of the " of "; default us", OPTION_CHOICE, .where = offsetof(record, output.system)}
/* clang-format on */

/* The writers of a command's answer, which is a record of its own; NULL: it has no such output. */
typedef struct {
    void (*text)(const void *answer, const output *o, FILE *to);
    const document *json;                      /* by whose table the answer is written, in SI */
    void (*csv)(const void *answer, FILE *to); /* SI */
    /* The picture; false, with the problem, when there is none, and nothing is drawn then. */
    bool (*draw)(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem);
    void (*above)(const void *answer, const output *o, FILE *to); /* said over a picture in the terminal; may be NULL */
    /* The page; `drawn` is empty where there is a problem, and the page says so. */
    void (*html)(const void *answer, const output *o, const picture_drawn *drawn, const picture_problem *problem, FILE *to);
} output_writers;

/* Completes what the options said; that no picture can be drawn is said before the work, not after it. False, with a complaint, when
   two would write to standard output or into one file, or one over a FILE of the command line, or no format of a picture is meant. */
bool output_agrees(output *o, const given *g);

/* Parts of it. No output is this file that is read, whatever the links between them; `what`: "the run sheet it reads". */
bool output_spares(const output *o, const char *read, const char *what);
bool output_files_agree(const output *o, const given *g);

/* Writes everything that was asked for; what can be written is, even when something else cannot, and the report stands when
   there is no picture in its place. The exit status: `status`, or STATUS_STOPPED when not all of it could be written. */
int output_write(const output_writers *w, const output *o, const void *answer, int status);

#endif
