#include "scenario/draft.h"

#include <stdio.h>
#include <string.h>

#include "base/array.h"
#include "base/words.h"
#include "habits/habits.h"

#define PASS "pass"

static const char *known_section(const cursor *c, const char *text, size_t length)
{
    const char *const *all = key_sections();
    words_nearest n = words_near(text, length);
    for (size_t i = 0; all[i] != NULL; i++) {
        if (words_same(text, length, all[i]))
            return all[i];
        words_consider(&n, all[i]);
    }
    cursor_error(c, text, "unknown section [%s]%s", words_quoted(text, length).text, words_suggestion(&n).text);
    return NULL;
}

/* The section a header opens; NULL when what follows must be passed over. */
static const char *open_section(draft *d, cursor *c)
{
    const char *close = memchr(c->at, ']', (size_t)(c->end - c->at));
    const char *start = c->at, *name = words_skip(c->at + 1, c->end);
    if (close == NULL) {
        cursor_error(c, c->end, "a section ends with ']'");
        return NULL;
    }
    c->at = close + 1;
    cursor_expect_end(c);
    if (name > close)
        name = close;
    const char *section = known_section(c, name, (size_t)(words_trim(name, close) - name));
    if (section == NULL)
        return NULL;
    size_t *line = &d->section_line[draft_section(section)];
    if (*line > 0)
        cursor_error(c, start, "[%s] stands here a second time; the first is on line %zu: move these lines up to it", section,
                     *line);
    else
        *line = c->line;
    return section;
}

static void unknown_key(draft *d, const cursor *c, const char *section, size_t length)
{
    words_nearest n = words_near(c->at, length);
    const key *elsewhere = key_find_elsewhere(c->at, length);
    const key_misnomer *called = key_misnamed(section, c->at, length);
    words_quote q = words_quoted(c->at, length);
    for (size_t i = 0; i < key_count(); i++)
        if (strcmp(key_at(i)->section, section) == 0)
            words_consider(&n, key_at(i)->words);
    if (called != NULL)
        n.word = called->means;
    if (strcmp(section, DRAFT_LESSON) == 0)
        words_consider(&n, PASS);
    if (n.word != NULL && key_find(section, n.word, strlen(n.word)) != NULL)
        d->meant[key_index(key_find(section, n.word, strlen(n.word)))] = true;
    if (called != NULL && called->answer == NULL)
        d->volume = *c;
    else if (called != NULL)
        cursor_error(c, c->at, "'%s' %s", q.text, called->answer);
    else if (elsewhere != NULL)
        cursor_error(c, c->at, "'%s' does not belong %s, but %s", q.text, key_place(section).text,
                     key_place(elsewhere->section).text);
    else
        cursor_error(c, c->at, "unknown key '%s' %s%s", q.text, key_place(section).text, words_suggestion(&n).text);
}

/* A title keeps what looks like a comment. */
static void whole_line(cursor *c)
{
    const source_line *l = &c->source->lines[c->line - 1];
    c->end = words_trim(c->at, l->text + l->length);
}

/* Where "key: value" has its colon, if the key is known; it is read as "key = value", and that is said. */
static const char *colon(const cursor *c, const char *section)
{
    const char *at = memchr(c->at, ':', (size_t)(c->end - c->at));
    size_t length = at != NULL ? (size_t)(words_trim(c->at, at) - c->at) : 0;
    const key *k = length > 0 ? key_find(section, c->at, length) : NULL;
    if (k == NULL)
        return NULL;
    const char *value = words_skip(at + 1, c->end);
    messages_remark(c->messages, c->source, c->line, at, "read as '%s = %s'", k->words,
                    words_quoted(value, (size_t)(c->end - value)).text);
    return at;
}

/* One of a key's own words is meant as it stands. */
static bool is_own_word(const key *k, const cursor *value)
{
    for (size_t i = 0; k->choices != NULL && k->choices[i] != NULL; i++)
        if (words_same(value->at, (size_t)(value->end - value->at), k->choices[i]))
            return true;
    return false;
}

static void note_line(draft *d, draft_lines *noted, const cursor *c)
{
    size_t *lines = boil_array_reserve(noted->list, &noted->capacity, noted->count, sizeof *lines);
    if (lines == NULL) {
        messages_lost(d->messages);
        return;
    }
    noted->list = lines;
    lines[noted->count++] = c->line;
}

/* The only key that a section may hold more than once: all its terms have to hold. */
static bool is_pass(const char *section, const char *at, size_t length)
{
    return strcmp(section, DRAFT_LESSON) == 0 && words_same(at, length, PASS);
}

static void note_setting(draft *d, cursor *c, const char *section)
{
    const char *equals = memchr(c->at, '=', (size_t)(c->end - c->at));
    if (equals == NULL)
        equals = colon(c, section);
    if (equals == NULL) {
        cursor_error(c, c->at, "expected 'key = value', got '%s'", words_quoted(c->at, (size_t)(c->end - c->at)).text);
        return;
    }
    const char *key_at_text = c->at;
    size_t length = (size_t)(words_trim(c->at, equals) - c->at);
    if (is_pass(section, c->at, length)) {
        note_line(d, &d->lines[DRAFT_PASSES], c);
        return;
    }
    const key *k = key_find(section, c->at, length);
    if (k == NULL) {
        unknown_key(d, c, section, length);
        return;
    }
    setting_line *line = &d->found[key_index(k)];
    if (line->found) {
        cursor_error(c, c->at, "'%s' is set a second time; the first is on line %zu", k->words, line->value.line);
        return;
    }
    *line = (setting_line){.found = true, .key_at = key_at_text, .value = *c};
    line->value.at = words_skip(equals + 1, c->end);
    if (k->kind == KEY_TITLE)
        whole_line(&line->value);
    else if (k->kind != KEY_PATH && k->kind != KEY_WORD && !is_own_word(k, &line->value))
        habits_of_value(&line->value);
}

/* Sections of lines that are no settings; NULL for those of settings. */
static draft_lines *lines_of(draft *d, const char *section)
{
    static const char *const sections[DRAFT_SCRIPTS] = {
        [DRAFT_ACTS] = DRAFT_SCHEDULE,   [DRAFT_UNCERTAIN] = "uncertain", [DRAFT_BREAKS] = "breaks",
        [DRAFT_MEASURES] = "measures",   [DRAFT_JOBS] = "jobs",           [DRAFT_NOW] = "now",
        [DRAFT_ANSWERS] = DRAFT_CHOICES, [DRAFT_NAMES] = "must name"};
    for (size_t i = 0; i < DRAFT_PASSES; i++)
        if (strcmp(section, i < DRAFT_SCRIPTS ? sections[i] : lesson_script_words[i - DRAFT_SCRIPTS]) == 0)
            return &d->lines[i];
    return NULL;
}

void draft_read_lines(draft *d)
{
    const char *section = "";
    draft_lines *lines = NULL; /* the section's, where it holds no settings */
    for (size_t line = 1; line <= d->text->count && !messages_full(d->messages); line++) {
        cursor c = cursor_of_line(d->text, line, d->messages);
        if (cursor_done(&c))
            continue;
        if (*c.at == '[') {
            section = open_section(d, &c);
            lines = section != NULL ? lines_of(d, section) : NULL;
        } else if (lines != NULL)
            note_line(d, lines, &c);
        else if (section != NULL)
            note_setting(d, &c, section);
    }
}
