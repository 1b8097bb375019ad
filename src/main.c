/* boilback -- what a boiling caustic salt bath does when something goes in or out. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "base/program.h"
#include "base/signals.h"
#include "base/words.h"
#include "cli/commands.h"

static int unknown_command(const char *name)
{
    words_nearest near = words_near(name, strlen(name));
    const command *c;
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        words_consider(&near, c->name);
    words_consider(&near, "--help");
    words_consider(&near, "--version");
    program_complain("unknown %s '%s'%s", name[0] == '-' ? "option" : "command", words_quoted(name, strlen(name)).text,
                     words_suggestion(&near).text);
    help_usage(NULL, stderr);
    return STATUS_USAGE;
}

static bool has_option(const command *c, const char *name, size_t length)
{
    for (size_t i = 0; i < c->options_count; i++)
        if (words_same(name, length, c->options[i].name))
            return true;
    return false;
}

/* Where one command alone has an option that another was given, that one may be meant. */
static void point_to_owner(const command *asked, const char *word)
{
    const char *name = word + strspn(word, "-");
    const command *c, *owner = NULL;
    size_t owners = 0, length = strcspn(name, "=");
    for (size_t i = 0; (c = commands_listed(i)) != NULL && !has_option(asked, name, length); i++)
        if (has_option(c, name, length)) {
            owner = c;
            owners++;
        }
    if (owners == 1)
        program_complain("'--%s' is an option of '%s'", words_quoted(name, length).text, owner->name);
}

static int carry_out(const command *c, int count, char *const words[])
{
    given g;
    options_problem problem;
    switch (options_read(c, count, words, &g, &problem)) {
    case OPTIONS_READ:
        return c->run(&g);
    case OPTIONS_HELP:
        help_command(c, stdout);
        return STATUS_DONE;
    case OPTIONS_WRONG:
        break;
    }
    program_complain("%s", problem.text);
    for (int i = 0; i < count; i++)
        if (strncmp(words[i], "--", 2) == 0)
            point_to_owner(c, words[i]);
    help_usage(c, stderr);
    return STATUS_USAGE;
}

static int answer(int count, char *const words[])
{
    if (count < 2) {
        help_usage(NULL, stderr);
        return STATUS_USAGE;
    }
    const char *name = words[1];
    if (strcmp(name, "--help") == 0 || strcmp(name, "-h") == 0 || strcmp(name, "help") == 0)
        help_program(stdout);
    else if (strcmp(name, "--version") == 0)
        puts(PROGRAM_NAME " " BOIL_VERSION_TEXT "\n" PROGRAM_LICENCE);
    else {
        const command *c = commands_named(name);
        return c == NULL ? unknown_command(name) : carry_out(c, count - 2, words + 2);
    }
    return STATUS_DONE;
}

int main(int argc, char *argv[])
{
    /* A report as long as this appears whole or not at all. */
    static char report[1 << 20];
    setvbuf(stdout, report, _IOFBF, sizeof report);
    signals_begin();
    gsl_set_error_handler_off();
    return program_finish(answer(argc, argv));
}
