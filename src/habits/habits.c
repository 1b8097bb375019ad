#include "habits/habits.h"

#include "actions/action.h"
#include "base/words.h"
#include "habits/load.h"
#include "habits/pour.h"
#include "habits/table.h"

/* Words of a stretch, each replaced where it may stand. */
static void replace_words(reword *w, size_t at, size_t end, unsigned place)
{
    size_t behind = w->length - end;
    for (size_t n; (n = reword_word(w, &at)) > 0 && at < w->length - behind; at += n)
        if (habit_replace(w, at, place))
            n = reword_word(w, &at);
}

/* The act that a word begins, by its own keyword; NULL: none. */
static const action_type *act_at(const reword *w, size_t at)
{
    const action_type *type;
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++)
        if (reword_taken(w, at, type->keyword) > 0)
            return type;
    return NULL;
}

/* Where the doing begins, its act by then in its own word; the end where there is none. */
static size_t doing_of(reword *w, const action_type **type)
{
    size_t at = 0;
    *type = NULL;
    for (size_t n; (n = reword_word(w, &at)) > 0; at += n) {
        if (!words_letter(w->text[at]))
            continue;
        pour_add_first(w, at);
        habit_replace(w, at, HABIT_ACT);
        *type = act_at(w, at);
        if (*type != NULL)
            return at;
    }
    return w->length;
}

static void reword_doing(reword *w, size_t at, const action_type *type)
{
    size_t start = at + reword_taken(w, at, type->keyword);
    if (type->group == ACTION_LOAD) {
        load_reword(w, start);
    } else if (type->group == ACTION_ADDITION) {
        replace_words(w, start, w->length, HABIT_POUR);
        habit_replace_marks(w, start, w->length);
    } else if (type->group == ACTION_SWITCH) {
        habit_replace_marks(w, start, w->length);
    }
}

/* When: up to the doing. */
static void reword_when(reword *w, size_t end)
{
    replace_words(w, 0, end, HABIT_WHEN);
}

void habits_of_line(cursor *line)
{
    reword w;
    const action_type *type;
    if (!reword_begin(&w, line))
        return;
    size_t at = doing_of(&w, &type);
    if (type != NULL)
        reword_doing(&w, at, type);
    reword_when(&w, at);
    reword_finish(&w, line);
}

void habits_of_doing(cursor *doing)
{
    habits_of_line(doing);
}

void habits_of_when(cursor *when)
{
    reword w;
    if (!reword_begin(&w, when))
        return;
    reword_when(&w, w.length);
    reword_finish(&w, when);
}

void habits_of_value(cursor *value)
{
    reword w;
    if (!reword_begin(&w, value))
        return;
    replace_words(&w, 0, w.length, HABIT_VALUE);
    habit_replace_marks(&w, 0, w.length);
    reword_finish(&w, value);
}
