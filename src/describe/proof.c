#include "describe/proof.h"

#include <string.h>

#include "base/program.h"
#include "describe/carried_out.h"
#include "describe/report.h"

/* What goes on beyond the end is judged at another moment; what was refused is none. */
static bool is_judged(const boil_run_of_set *r)
{
    return !r->refused && !r->continued;
}

static void judge(const scenario *s, const carried_out *o, proof_script *out)
{
    out->likely = lesson_judge(&s->lesson, &s->plant, &o->central);
    for (size_t i = 0; i < o->set.count; i++) {
        if (!is_judged(&o->set.other[i]))
            continue;
        out->others++;
        out->passed += lesson_judge(&s->lesson, &s->plant, &o->set.other[i].history).passed;
    }
}

static void look_for_names(const lesson *l, const carried_out *o, proof *out)
{
    for (size_t i = 0; i < l->must_name_count; i++)
        if (!lesson_names(&o->found, l->must_name[i]) && !lesson_names(&o->possible, l->must_name[i]))
            out->unnamed[out->unnamed_count++] = l->must_name[i];
}

static boil_outcome judge_schedule(const scenario *s, proof *out)
{
    boil_run_options options = boil_run_options_default();
    carried_out done;
    boil_outcome outcome = carried_out_of(s, &options, &done);
    if (outcome != BOIL_OK)
        return outcome;
    judge(s, &done, &out->own);
    out->own.as_wanted = true;
    carried_out_free(&done);
    return BOIL_OK;
}

static boil_outcome judge_script(const scenario *s, lesson_script which, proof *out)
{
    boil_run_options options = boil_run_options_default();
    scenario script = scenario_with(s, &s->scripts[which]);
    carried_out done;
    boil_outcome outcome = carried_out_of(&script, &options, &done);
    if (outcome != BOIL_OK)
        return outcome;
    proof_script *p = &out->script[which];
    judge(s, &done, p);
    p->as_wanted = p->likely.passed == (which == LESSON_CAREFUL) && !p->likely.stopped;
    if (which == LESSON_RECKLESS)
        look_for_names(&s->lesson, &done, out);
    out->holds = out->holds && p->as_wanted && p->likely.waited == 0;
    carried_out_free(&done);
    return BOIL_OK;
}

boil_outcome proof_of(const scenario *s, proof *out)
{
    boil_outcome outcome = BOIL_OK;
    *out = (proof){.holds = true};
    if (!s->lesson.scripted)
        return judge_schedule(s, out);
    for (size_t i = 0; i < LESSON_SCRIPTS && outcome == BOIL_OK; i++)
        outcome = judge_script(s, (lesson_script)i, out);
    out->holds = out->holds && out->unnamed_count == 0;
    return outcome;
}

static unit_system system_of(const lesson_term *t)
{
    const char *words = t->low_words.text[0] != '\0' ? t->low_words.text : t->high_words.text;
    static const char *const si[] = {"kg", " g", "mm", "cm", " m", "degC", " K"};
    for (size_t i = 0; i < sizeof si / sizeof si[0]; i++)
        if (strstr(words, si[i]) != NULL)
            return UNITS_SI;
    return UNITS_US;
}

static lesson_text value_text(const lesson_term *t, lesson_value value)
{
    return lesson_value_text(t, value, system_of(t));
}

static void print_failed(const lesson *l, const lesson_verdict *v, FILE *to)
{
    for (size_t i = 0; i < l->terms_count; i++)
        if (!v->holds[i])
            fprintf(to, "             %-14s %-14s %s\n", l->terms[i].measure->words, value_text(&l->terms[i], v->value[i]).text,
                    lesson_limit_text(&l->terms[i]).text);
    if (v->waited > 0)
        fprintf(to, "             %s in vain\n", format_count(v->waited, "act waits", "acts wait").text);
    if (v->stopped)
        fputs("             the run stopped early\n", to);
}

static bool is_unnamed(const proof *p, const char *id)
{
    for (size_t i = 0; i < p->unnamed_count; i++)
        if (p->unnamed[i] == id)
            return true;
    return false;
}

static void print_names(const lesson *l, const proof *p, FILE *to)
{
    const char *before = " reckless is found for ";
    for (size_t i = 0; i < l->must_name_count; i++)
        if (!is_unnamed(p, l->must_name[i])) {
            fprintf(to, "%s%s", before, l->must_name[i]);
            before = ", ";
        }
    if (l->must_name_count > p->unnamed_count)
        fputc('\n', to);
}

static void print_script(const lesson *l, const char *script, const proof_script *of, FILE *to)
{
    bool passed = of->likely.passed;
    fprintf(to, " %-11s %s; in %zu of %zu other runs as well\n", script, passed ? "passes" : "does not pass",
            passed ? of->passed : of->others - of->passed, of->others);
    print_failed(l, &of->likely, to);
}

void proof_print(const scenario *s, const proof *p, FILE *to)
{
    fputs(s->lesson.scripted ? "\nWhat the lesson proves\n" : "\nA lesson without scripts\n", to);
    if (!s->lesson.scripted)
        print_script(&s->lesson, "as worked", &p->own, to);
    for (size_t i = 0; s->lesson.scripted && i < LESSON_SCRIPTS; i++)
        print_script(&s->lesson, lesson_script_words[i], &p->script[i], to);
    print_names(&s->lesson, p, to);
}

/* A script that should pass and does not: each term that fails, at its line. */
static void complain_failed(const scenario *s, const lesson_verdict *v, const char *script)
{
    for (size_t i = 0; i < s->lesson.terms_count; i++) {
        const lesson_term *t = &s->lesson.terms[i];
        if (!v->holds[i])
            program_complain("%s:%zu: [%s] does not pass: %s is %s and must be %s; change its acts, or the term", s->path,
                             t->line, script, t->measure->words, value_text(t, v->value[i]).text, lesson_limit_text(t).text);
    }
}

static void complain_script(const scenario *s, const proof_script *p, lesson_script which)
{
    const char *script = lesson_script_words[which];
    if (p->likely.stopped)
        program_complain("%s: the run of [%s] stops early: a lesson needs one that reaches its end", s->path, script);
    else if (p->likely.waited > 0)
        program_complain("%s: in [%s] %s in vain: what it waits for never comes", s->path, script,
                         format_count(p->likely.waited, "act waits", "acts wait").text);
    if (which == LESSON_CAREFUL)
        complain_failed(s, &p->likely, script);
    else if (p->likely.passed)
        program_complain("%s: [%s] passes: all its terms hold; add a 'pass' that it fails, or change its acts", s->path,
                         script);
}

void proof_complain(const scenario *s, const proof *p)
{
    for (size_t i = 0; s->lesson.scripted && i < LESSON_SCRIPTS; i++)
        complain_script(s, &p->script[i], (lesson_script)i);
    for (size_t i = 0; i < p->unnamed_count; i++)
        program_complain("%s: the run of [reckless] is not found for '%s': leave it out of [must name], or make it worse",
                         s->path, p->unnamed[i]);
}
