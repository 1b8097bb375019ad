#include "pictures/picture_frame.h"

#include <math.h>
#include <string.h>

#include "describe/finding_words.h"

/* A mark is as wide as three characters of some eighty. */
static const double mark_share = 3.0 / 80;

/* What stands before the words in the list takes about this many characters. */
#define BEFORE_WORDS 23

typedef struct {
    const carried_out *o;
    unit_system system;
    size_t columns, written;
    double at_s[MARKS_MAX];
    int lane[MARKS_MAX];
    FILE *to;
} marks;

static bool is_free(const marks *m, int lane, double t)
{
    double width = mark_share * m->o->central.end_s;
    for (size_t i = 0; i < m->written; i++)
        if (m->lane[i] == lane && fabs(m->at_s[i] - t) < width)
            return false;
    return true;
}

/* The first lane where no other mark is near. */
static int lane_for(const marks *m, double t)
{
    int lane = 0;
    while (!is_free(m, lane, t))
        lane++;
    return lane;
}

/* What does not fit in a line goes on in rows of its own, which have no number. */
static void write_words(marks *m, const char *words)
{
    size_t lines = 0;
    for (const char *at = words; *at != '\0'; at += strspn(at, " ")) {
        finding_words line;
        size_t length = ++lines < MARK_LINES_MAX ? picture_line(at, m->columns) : strlen(at);
        snprintf(line.text, sizeof line.text, "%.*s", (int)length, at);
        if (at > words)
            fputs("0\tnan\t0\t0\t1\tx\t", m->to);
        picture_text(m->to, picture_fitted(line.text, m->columns).text);
        fputc('\n', m->to);
        at += length;
    }
}

static void write(marks *m, const boil_finding *f, bool likely)
{
    finding_words words = finding_words_of(m->o, f, m->system);
    int lane = lane_for(m, f->time_s);
    m->at_s[m->written] = f->time_s;
    m->lane[m->written++] = lane;
    fprintf(m->to, "%zu\t%.9g\t%d\t%d\t%d\tx%s\t", m->written, f->time_s, lane, (int)f->severity, likely,
            finding_clock(m->o, f).text);
    write_words(m, words.text);
}

static size_t write_list(marks *m, const boil_findings *list, bool likely)
{
    size_t i = 0;
    for (; i < list->count && m->written < MARKS_MAX; i++)
        write(m, &list->list[i], likely);
    return list->count - i;
}

void picture_marks(picture *p, const carried_out *o, unit_system s, picture_format format)
{
    marks m = {.o = o, .system = s, .columns = picture_columns(format) - BEFORE_WORDS};
    m.to = picture_input(p, "marks.tsv");
    if (m.to == NULL)
        return;
    size_t more = write_list(&m, &o->found, true) + write_list(&m, &o->possible, false);
    if (more > 0)
        fprintf(m.to, "0\tnan\t0\t0\t1\tx\tx... and %zu more, see the report\n", more);
    picture_input_end(p, m.to);
}
