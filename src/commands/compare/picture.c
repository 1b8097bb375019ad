#include "commands/compare/answer.h"

#include <math.h>

#include "describe/trace.h"
#include "pictures/picture_frame.h"

static bool draw(const picture_run *a, const picture_run *b, picture_drawn *drawn, picture_problem *problem)
{
    const picture_input inputs[] = {
        {"frame-a.tsv", picture_frame, a},  {"trace-a.csv", trace_csv, &a->trace}, {"acts-a.tsv", picture_actions, a},
        {"lanes-a.tsv", picture_lanes, a},  {"frame-b.tsv", picture_frame, b},     {"trace-b.csv", trace_csv, &b->trace},
        {"acts-b.tsv", picture_actions, b}, {"lanes-b.tsv", picture_lanes, b},     {0}};
    return picture_draw("compare.gp", a->format, inputs, drawn, problem);
}

bool compare_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    picture_run a, b;
    const compare_answer *c = answer;
    double end_s = fmax(c->a->central.end_s, c->b->central.end_s);
    bool good = picture_run_begin(&a, c->a, o->system, format, end_s);
    good = picture_run_begin(&b, c->b, o->system, format, end_s) && good && draw(&a, &b, drawn, problem);
    picture_run_end(&a);
    picture_run_end(&b);
    return good;
}
