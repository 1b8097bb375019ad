#include "lesson/lesson.h"

#include <math.h>
#include <string.h>

#include "base/format.h"

/* Five loads of 60 lb are 300 lb but for the rounding of their sum. */
static bool reaches(double value, double limit)
{
    return value >= limit - 1e-9 * fabs(limit);
}

static bool holds(const lesson_term *t, lesson_value value)
{
    return reaches(value.si, t->low) && reaches(-value.si, -t->high) && !(value.more_than && isfinite(t->high));
}

static bool is_in_vain(const boil_act_result *a)
{
    return a->end == BOIL_ACT_WAITING || a->end == BOIL_ACT_LAPSED || a->end == BOIL_ACT_TOO_LATE;
}

lesson_verdict lesson_judge(const lesson *l, const boil_plant *p, const boil_history *h)
{
    lesson_verdict v = {.stopped = h->end != BOIL_RUN_DONE};
    for (size_t i = 0; i < l->terms_count; i++) {
        v.value[i] = lesson_measured(l->terms[i].measure, p, h);
        v.holds[i] = holds(&l->terms[i], v.value[i]);
        v.failed += !v.holds[i];
    }
    for (size_t i = 0; i < h->acts_count; i++)
        v.waited += is_in_vain(&h->acts[i]);
    v.passed = v.failed == 0 && v.waited == 0 && !v.stopped;
    return v;
}

lesson_text lesson_times_text(lesson_value times)
{
    const double most = 100; /* judgement: beyond it nobody can tell one from the other */
    lesson_text w = {""};
    if (times.more_than)
        TEXT_ADD(w.text, "more than %.0f", floor(fmin(times.si, most)));
    else
        TEXT_ADD(w.text, "%.1f", times.si);
    return w;
}

lesson_text lesson_value_text(const lesson_term *t, lesson_value of, unit_system system)
{
    lesson_text w = {""};
    const double value = of.si;
    if (t->measure->holds)
        TEXT_ADD(w.text, "%s", value > 0 ? "yes" : "no");
    else if (isinf(value))
        TEXT_ADD(w.text, "never back");
    else if (t->measure->dimension == DIM_COUNT)
        w = lesson_times_text(of);
    else if (t->measure->dimension == DIM_LENGTH && value <= 0)
        TEXT_ADD(w.text, "over the rim");
    else
        TEXT_ADD(w.text, "%s", format_quantity(system, t->measure->dimension, value).text);
    return w;
}

lesson_text lesson_limit_text(const lesson_term *t)
{
    lesson_text w = {""};
    if (t->measure->holds)
        TEXT_ADD(w.text, "yes");
    else if (isinf(t->high))
        TEXT_ADD(w.text, "at least %s", t->low_words.text);
    else if (isinf(t->low))
        TEXT_ADD(w.text, "at most %s", t->high_words.text);
    else if (t->high == t->low)
        TEXT_ADD(w.text, "none");
    else
        TEXT_ADD(w.text, "%s to %s", t->low_words.text, t->high_words.text);
    return w;
}

bool lesson_names(const boil_findings *f, const char *id)
{
    for (size_t i = 0; i < f->count; i++)
        if (strcmp(f->list[i].id, id) == 0)
            return true;
    return false;
}
