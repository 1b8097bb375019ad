#include "commands/compare/answer.h"

#include <math.h>

#include "pictures/picture_frame.h"

bool compare_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    static const picture_run_files of_a = {"frame-a.tsv", "trace-a.csv", "acts-a.tsv", "lanes-a.tsv"},
                                   of_b = {"frame-b.tsv", "trace-b.csv", "acts-b.tsv", "lanes-b.tsv"};
    picture p;
    const compare_answer *c = answer;
    double end_s = fmax(c->a->central.end_s, c->b->central.end_s);
    if (!picture_begin(&p, problem))
        return false;
    bool good = picture_run(&p, c->a, o->system, format, end_s, &of_a) &&
                picture_run(&p, c->b, o->system, format, end_s, &of_b) &&
                picture_draw(&p, "compare.gp", format, drawn, problem);
    picture_end(&p);
    return good;
}
