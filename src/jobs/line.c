#include "jobs/jobs.h"

#include "base/words.h"
#include "jobs/text.h"

static const job_clause listed[] = {
    {"for TIME [to TIME]",
     "how long it hangs once it is hot through, and at the most; without 'to' 15 min more than the least"},
    {"from MOMENT", "it does not go in before; default the start"},
    {"due MOMENT", "it is lifted by then"},
    {"must", "what is due has to be out: a plan that is late is none"},
    {"low", "its lateness counts a third of that of others"},
    {"may split", "it may hang in several baskets, each as heavy as the basket that it states"},
    {"may share", "it may go in together with another that may, and come out with it"},
};

job_clause job_clause_listed(size_t index)
{
    return index < sizeof listed / sizeof listed[0] ? listed[index] : (job_clause){NULL, NULL};
}

/* "15 min to 25 min" */
static bool read_stay(cursor *part, job_said *said)
{
    if (said->least.text != NULL)
        return cursor_error(part, part->at, "'for' is said twice");
    if (!quantity_read(part, "for", UNIT_OF(DIM_TIME), &said->least) ||
        !quantity_within(part, "for", &said->least, &job_stay_bounds))
        return false;
    if (cursor_take(part, "to") && (!quantity_read(part, "to", UNIT_OF(DIM_TIME), &said->most) ||
                                    !quantity_within(part, "to", &said->most, &job_stay_bounds)))
        return false;
    return cursor_expect_end(part);
}

typedef enum { JOB_CLAUSE, JOB_CLAUSE_WRONG, JOB_CLAUSE_OF_LOAD } clause_end;

static clause_end ended(bool good)
{
    return good ? JOB_CLAUSE : JOB_CLAUSE_WRONG;
}

static clause_end read_priority(cursor *part, job_said *said)
{
    const cursor place = *part;
    for (unsigned i = 0; job_priorities[i] != NULL; i++)
        if (cursor_take(part, job_priorities[i])) {
            if (said->ranked)
                return ended(cursor_error(&place, place.at, "'%s' is a second priority: say one", job_priorities[i]));
            said->ranked = true;
            said->priority = (boil_plan_priority)i;
            return ended(cursor_expect_end(part));
        }
    return JOB_CLAUSE_OF_LOAD;
}

static clause_end read_clause(const job_reader *r, cursor *part, job_said *said)
{
    if (cursor_take(part, "for"))
        return ended(read_stay(part, said));
    if (cursor_take(part, "from"))
        return ended(job_moment_read(r, part, "from", &said->from));
    if (cursor_take(part, "due"))
        return ended(job_moment_read(r, part, "due", &said->due));
    if (cursor_take(part, "may split"))
        return ended((said->may_split = cursor_expect_end(part)));
    if (cursor_take(part, "may share"))
        return ended((said->may_share = cursor_expect_end(part)));
    return read_priority(part, said);
}

/* Where its mass begins: the first word that could be one; NULL when none could. */
static const char *mass_at(const cursor *line)
{
    cursor c = *line;
    while (!cursor_done(&c)) {
        if (quantity_comes(c, UNIT_OF(DIM_MASS)))
            return c.at;
        size_t token = cursor_token(&c);
        c.at += token > 0 ? token : 1;
    }
    return NULL;
}

void jobs_read_line(const job_reader *r, cursor *line)
{
    cursor_done(line);
    job_said said = {.name_at = line->at};
    const cursor place = *line;
    const char *mass = mass_at(line);
    job_text load = job_text_begin(line->at);
    bool good = true;
    cursor part;
    if (mass == NULL || mass == line->at) {
        cursor_error(line, line->at,
                     "a job begins with its name and its mass, such as 'frames 190 lb, plate 1/4 in, for 15 min'");
        return;
    }
    said.name_length = (size_t)(words_trim(line->at, mass) - line->at);
    line->at = mass;
    job_text_say(&load, "load ", mass);
    for (bool first = true; cursor_part(line, &part); first = false) {
        cursor whole = part;
        clause_end end = first ? JOB_CLAUSE_OF_LOAD : read_clause(r, &part, &said);
        good = good && end != JOB_CLAUSE_WRONG;
        if (end != JOB_CLAUSE_OF_LOAD)
            continue;
        if (!first)
            job_text_say(&load, ", ", whole.at);
        job_text_add(&load, whole.at, whole.end);
    }
    if (said.least.text == NULL && good)
        cursor_error(&place, place.at, "'%s' needs how long it hangs once it is hot, such as 'for 15 min to 25 min'",
                     words_quoted(said.name_at, said.name_length).text);
    said.wrong = !good;
    job_finish(r, &place, &load, &said);
}
