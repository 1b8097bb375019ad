/* Scenarios drawn by seed, of every key and every act of the language, and what must hold of each. Nothing here is known from
   outside: it is order, sums and sameness that are tested.
       SEEDS=0-2000   in the environment: these seeds, each with all its runs; without it a few
       SEEDS=17       that one
       SHRINK=no      what fails is kept as it was drawn
   A scenario of which something does not hold is made as short as it stays so, and left in the folder of the build: as a scenario,
   and beside it as tests/random/kept holds those that once failed. */
#include <dirent.h>
#include <gsl/gsl_errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "support/close.h"

#include "actions/action.h"
#include "random/invariants.h"
#include "random/plants.h"
#include "random/shrink.h"
#include "scenario/keys.h"
#include "support/sampled.h"

typedef struct {
    uint64_t from, to, whole_every;
} range;

static const char *folder; /* of this program */

static range seeds(void)
{
    const char *asked = getenv("SEEDS");
    range r = {0, (uint64_t)sampled(100, 30), 10};
    if (asked == NULL)
        return r;
    char *end;
    r.from = strtoull(asked, &end, 10);
    r.to = *end == '-' ? strtoull(end + 1, NULL, 10) : r.from + 1;
    r.whole_every = r.to - r.from >= 50 ? 10 : 1;
    return r;
}

static bool says(const draft *d, const char *section, const char *words)
{
    size_t length = strlen(words);
    for (size_t i = 0; i < d->count; i++) {
        const char *line = d->lines[i].line.text;
        if (strcmp(d->lines[i].section, section) == 0 && strncmp(line, words, length) == 0 &&
            strncmp(line + length, " = ", 3) == 0)
            return true;
    }
    return false;
}

static bool acts(const draft *d, const char *words)
{
    for (size_t i = 0; i < d->count; i++)
        if (strcmp(d->lines[i].section, "schedule") == 0 && strstr(d->lines[i].line.text, words) != NULL)
            return true;
    return false;
}

#define DRAWN 400

static bool ever(const draft *drawn, bool (*has)(const draft *, const char *, const char *), const char *one, const char *other)
{
    for (size_t i = 0; i < DRAWN; i++)
        if (has(&drawn[i], one, other))
            return true;
    return false;
}

static bool acts_so(const draft *d, const char *words, const char *unused)
{
    (void)unused;
    return acts(d, words);
}

/* A key, an act or a clause that is new must be drawn too. A run sheet is a way to write the same acts, a list of jobs the same jobs. */
static void the_whole_language_is_drawn(void **state)
{
    (void)state;
    draft *drawn = malloc(DRAWN * sizeof *drawn);
    assert_non_null(drawn);
    for (size_t i = 0; i < DRAWN; i++)
        drawn[i] = random_draft(i);
    for (size_t i = 0; i < key_count(); i++)
        if (key_at(i)->kind != KEY_PATH && !ever(drawn, says, key_at(i)->section, key_at(i)->words))
            fail_msg("[%s] %s is never drawn", key_at(i)->section, key_at(i)->words);
    for (size_t i = 0; action_type_listed(i) != NULL; i++) {
        const action_type *a = action_type_listed(i);
        char word[40];
        snprintf(word, sizeof word, "  %s", a->keyword);
        if (!ever(drawn, acts_so, word, NULL))
            fail_msg("the act %s is never drawn", a->keyword);
        for (size_t k = 0; k < a->clause_count; k++)
            if (!ever(drawn, acts_so, a->clauses[k].words, NULL))
                fail_msg("the clause %s of %s is never drawn", a->clauses[k].words, a->keyword);
    }
    free(drawn);
}

static void keep(const draft *d, uint64_t seed, const invariant_means *m, invariant broken, const char *why)
{
    char path[700];
    draft least = getenv("SHRINK") == NULL || strcmp(getenv("SHRINK"), "no") != 0 ? shrink(d, m, broken) : *d;
    snprintf(path, sizeof path, "%s/failed-%llu-%d.bath", folder, (unsigned long long)seed, (int)broken);
    FILE *to = fopen(path, "w");
    print_message("seed %llu, %s: %s; kept as %s\n", (unsigned long long)seed, invariant_words[broken], why, path);
    if (to == NULL)
        return;
    fprintf(to, "# seed %llu, %s: %s\n", (unsigned long long)seed, invariant_words[broken], why);
    draft_write(&least, &(draft_style){0}, to);
    fclose(to);
    strcpy(strrchr(path, '.'), ".kept");
    if ((to = fopen(path, "w")) == NULL)
        return;
    fprintf(to, "%s\n", invariant_words[broken]);
    draft_keep(&least, to);
    fclose(to);
}

typedef struct {
    int tried, refused, failed;
    double hours;
} tally;

static void one_seed(uint64_t seed, invariant_means *m, tally *t)
{
    draft d = random_draft(seed);
    verdict_of v;
    invariants_judge(&d, m, HOLDS_ALL, &v);
    t->refused += !v.valid;
    t->tried += v.valid;
    t->hours += v.hours;
    for (int i = 0; i < HOLDS_ALL; i++)
        if (v.broken[i]) {
            t->failed++;
            keep(&d, seed, m, (invariant)i, v.why[i]);
        }
}

/* Every section that is drawn has a place in what is kept. */
static void what_is_kept_is_read_back(void **state)
{
    (void)state;
    for (uint64_t seed = 0; seed < 200; seed++) {
        draft d = random_draft(seed), back;
        FILE *kept = tmpfile();
        assert_non_null(kept);
        draft_keep(&d, kept);
        rewind(kept);
        if (!draft_kept(kept, &back))
            fail_msg("seed %llu is not read back", (unsigned long long)seed);
        fclose(kept);
        assert_int_equal(back.count, d.count);
        for (size_t i = 0; i < d.count; i++) {
            assert_string_equal(back.lines[i].section, d.lines[i].section);
            assert_string_equal(back.lines[i].line.text, d.lines[i].line.text);
            assert_int_equal(back.lines[i].group, d.lines[i].group);
        }
    }
}

#define KEPT "tests/random/kept"

static invariant invariant_named(FILE *from)
{
    char words[40] = "";
    assert_non_null(fgets(words, sizeof words, from));
    words[strcspn(words, "\n")] = '\0';
    for (int i = 0; i < HOLDS_ALL; i++)
        if (strcmp(words, invariant_words[i]) == 0)
            return (invariant)i;
    fail_msg("no invariant is called %s", words);
    return HOLDS_ALL;
}

static void holds_again(const char *name, invariant_means *m)
{
    char path[300];
    draft d;
    verdict_of v;
    snprintf(path, sizeof path, KEPT "/%s", name);
    FILE *from = fopen(path, "r");
    assert_non_null(from);
    invariant of = invariant_named(from);
    m->whole = of == HOLDS_SET || of == HOLDS_PROGRAM;
    if (!draft_kept(from, &d))
        fail_msg("%s holds no draft", path);
    fclose(from);
    invariants_judge(&d, m, of, &v);
    if (!v.valid || v.broken[of])
        fail_msg("%s: %s", path, v.valid ? v.why[of] : "is refused");
}

static invariant_means means(char *program, char *scratch, size_t size)
{
    snprintf(program, size, "%s/../../boilback", folder);
    snprintf(scratch, size, "%s/trial-%ld", folder, (long)getpid());
    return (invariant_means){.program = program, .scratch = scratch};
}

static void what_once_failed_holds(void **state)
{
    (void)state;
    char program[700], scratch[700];
    invariant_means m = means(program, scratch, sizeof program);
    DIR *kept = opendir(KEPT);
    size_t count = 0;
    assert_non_null(kept);
    for (struct dirent *entry; (entry = readdir(kept)) != NULL;)
        if (strstr(entry->d_name, ".kept") != NULL) {
            holds_again(entry->d_name, &m);
            count++;
        }
    closedir(kept);
    strcat(scratch, ".bath");
    remove(scratch);
    assert_true(count > 0);
}

static void what_must_hold_holds(void **state)
{
    (void)state;
    char program[700], scratch[700];
    range r = seeds();
    tally t = {0, 0, 0, 0};
    invariant_means m = means(program, scratch, sizeof program);
    for (uint64_t seed = r.from; seed < r.to; seed++) {
        m.whole = seed % r.whole_every == 0;
        one_seed(seed, &m, &t);
    }
    strcat(scratch, ".bath");
    remove(scratch);
    print_message("%d scenarios of %.0f min in the mean, %d refused; %d failed\n", t.tried,
                  60 * t.hours / (t.tried > 0 ? t.tried : 1), t.refused, t.failed);
    assert_int_equal(t.failed, 0);
    assert_true(t.tried > 2 * t.refused);
}

int main(int count, char *words[])
{
    char *slash = count > 0 ? strrchr(words[0], '/') : NULL;
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_whole_language_is_drawn),
        cmocka_unit_test(what_is_kept_is_read_back),
        cmocka_unit_test(what_once_failed_holds),
        cmocka_unit_test(what_must_hold_holds),
    };
    if (slash == NULL)
        return 2;
    *slash = '\0';
    folder = words[0];
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("random", tests, NULL, NULL);
}
