/* What gnuplot is given to draw curves, told by one of ours that draws nothing and hands it back. */
#include "support/close.h"

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "pictures/picture_curves.h"

typedef struct {
    double where, level_m;
} point;

CURVE_COLUMN(where_of, point, where)
CURVE_COLUMN(level_of, point, level_m)

static const panel panels[] = {{"Level", {{CURVE_POINTS, "as read", DIM_LENGTH, level_of}}, 1}};

/* So many points, against a temperature or on a clock from 9:00. */
static curves curves_of(const point *rows, size_t count, bool clock)
{
    return (curves){.title = "a title",
                    .said = "what is said",
                    .axis = clock ? "" : "Bath",
                    .dimension = DIM_TEMPERATURE,
                    .clock = clock,
                    .start_s = 32400,
                    .rows = rows,
                    .rows_count = count,
                    .x = where_of,
                    .panels = panels,
                    .panels_count = 1,
                    .system = UNITS_SI};
}

/* What comes back has that line. */
static void expect(const curves *c, const char *line)
{
    picture_problem problem = {""};
    picture_drawn drawn;
    if (!picture_curves(c, PICTURE_SVG, &drawn, &problem))
        fail_msg("%s", problem.text);
    if (strstr(drawn.bytes, line) == NULL)
        fail_msg("lacks '%s':\n%s", line, drawn.bytes);
    picture_forget(&drawn);
}

/* From the least to the most, in whatever order they come; of one point alone one more, for an axis has a length. */
static void the_axis_holds_all_points(void **state)
{
    (void)state;
    static const point rows[] = {{353.15, 0.5}, {293.15, 0.4}, {413.15, (double)NAN}};
    curves c = curves_of(rows, 3, false);
    expect(&c, "\naxis\t20\t140\txBath, degC\n");
    expect(&c, "\n80\t500\n20\t400\n140\tnan\n");
    expect(&c, "\npanel\t0\t0\txLevel, mm\ncurve\t2\t0\txas read\n");
    expect(&c, "\nsaid\t0\t0\txwhat is said\n");
    c = curves_of(rows, 1, false);
    expect(&c, "\naxis\t80\t81\txBath, degC\n");
}

static void times_stay_seconds(void **state)
{
    (void)state;
    static const point rows[] = {{600, 0.5}, {1800, 0.4}};
    curves c = curves_of(rows, 2, true);
    expect(&c, "\nclock\t32400\t0\tx\naxis\t600\t1800\tx\n");
    expect(&c, "\n600\t500\n1800\t400\n");
    c = curves_of(rows, 1, true);
    expect(&c, "\naxis\t600\t601\tx\n");
}

static char folder[] = "/tmp/boilback-test-XXXXXX", *path;

static int begin(void **state)
{
    char program[sizeof folder + 8];
    (void)state;
    if (mkdtemp(folder) == NULL || (path = strdup(getenv("PATH"))) == NULL)
        return -1;
    snprintf(program, sizeof program, "%s/gnuplot", folder);
    FILE *f = fopen(program, "w");
    if (f == NULL)
        return -1;
    fputs("#!/bin/sh\n{ echo '<?xml'; /bin/cat frame.tsv curves.tsv; echo '</svg>'; } >$5\n", f);
    return fclose(f) == 0 && chmod(program, 0700) == 0 ? setenv("PATH", folder, 1) : -1;
}

static int end(void **state)
{
    char program[sizeof folder + 8];
    (void)state;
    snprintf(program, sizeof program, "%s/gnuplot", folder);
    int gone = unlink(program) == 0 ? rmdir(folder) : -1;
    setenv("PATH", path, 1);
    free(path);
    return gone;
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_axis_holds_all_points), cmocka_unit_test(times_stay_seconds)};
    setenv("BOILBACK_DATA", ".", 1); /* tests are run from the top folder */
    return cmocka_run_group_tests_name("curves", tests, begin, end);
}
