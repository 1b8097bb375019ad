#include "habits/pour.h"

#include <stdio.h>
#include <string.h>

static const char *const verbs[] = {"add", "pour"};

/* What may be added, and its own word. */
static const struct {
    const char *typed, *act;
} added[] = {{"water", "water"}, {"salts", "salts"}, {"salt", "salts"}, {"liquid", "liquid"}};

static size_t verb_at(const reword *w, size_t at)
{
    size_t taken = 0;
    for (size_t i = 0; taken == 0 && i < sizeof verbs / sizeof verbs[0]; i++)
        taken = reword_taken(w, at, verbs[i]);
    return taken;
}

/* Puts the act in place of the verb, and takes its word, and an "of" before it, from where it stood. */
static void turn(reword *w, size_t verb, size_t verb_length, size_t from, size_t to, const char *act)
{
    reword_replace(w, from, to - from, "");
    reword_replace(w, verb, verb_length, act);
}

void pour_add_first(reword *w, size_t at)
{
    size_t verb = verb_at(w, at), word = at + verb;
    size_t of = 0; /* where an "of" stands before the word */
    if (verb == 0)
        return;
    for (size_t n; (n = reword_word(w, &word)) > 0 && w->text[word] != ','; word += n) {
        for (size_t i = 0; i < sizeof added / sizeof added[0]; i++) {
            size_t taken = reword_taken(w, word, added[i].typed), from = of > 0 ? of : word;
            if (taken == 0)
                continue;
            while (w->text[from - 1] == ' ')
                from--;
            turn(w, at, verb, from, word + taken, added[i].act);
            return;
        }
        of = reword_taken(w, word, "of") > 0 ? word : 0;
    }
}
