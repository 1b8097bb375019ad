/* The writer of HTML, and the page it writes: every text escaped, every element closed, nothing fetched. */
#include "support/scenario_run.h"
#include "support/close.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/html.h"
#include "commands/run/parts.h"
#include "commands/run/output.h"
#include "describe/gist.h"
#include "properties/water.h"
#include "support/printed.h"

static void texts_are_escaped(void **state)
{
    (void)state;
    printed p;
    printed_begin(&p);
    html h = html_to(p.to);
    html_text(&h, "<script>\"a\" & 'b'</script>\n\x01\x7f \u00b0F \xc2\x85 \xff \xed\xa0\x80 \xef\xbf\xbf");
    char *got = printed_end(&p);
    assert_string_equal(got, "&lt;script&gt;&quot;a&quot; &amp; &#39;b&#39;&lt;/script&gt;\ufffd\ufffd\ufffd \u00b0F "
                             "\ufffd \ufffd \ufffd\ufffd\ufffd \ufffd");
    free(got);
}

static void elements_close_in_their_order(void **state)
{
    (void)state;
    printed p;
    printed_begin(&p);
    html h = html_to(p.to);
    html_open(&h, "table", "class=\"wide\"");
    html_open(&h, "tr", NULL);
    html_element(&h, "td", NULL, "%s %d", "<b>", 7);
    html_empty(&h, "br", NULL);
    html_close(&h);
    html_close(&h);
    char *got = printed_end(&p);
    assert_string_equal(got, "\n<table class=\"wide\">\n<tr><td>&lt;b&gt; 7</td>\n<br /></tr></table>\n");
    free(got);
}

/* A check of form ------------------------------------------------------------------------------------------------- */

typedef struct {
    char open[40][24];
    size_t depth;
} nesting;

static const char *name_end(const char *at)
{
    while (isalnum((unsigned char)*at) || *at == ':' || *at == '-')
        at++;
    return at;
}

/* Behind the ">" of a tag; quoted values may hold one. */
static const char *tag_end(const char *at)
{
    char quote = '\0';
    for (; *at != '\0' && (quote != '\0' || *at != '>'); at++) {
        if (quote == '\0' && (*at == '"' || *at == '\''))
            quote = *at;
        else if (*at == quote)
            quote = '\0';
        assert_true(*at != '<');
    }
    assert_true(*at == '>');
    return at + 1;
}

static const char *pass_tag(nesting *n, const char *at)
{
    bool closes = at[1] == '/';
    const char *name = at + 1 + closes, *end = tag_end(at + 1);
    size_t length = (size_t)(name_end(name) - name);
    if (at[1] == '!')
        return end;
    assert_true(length > 0 && length < sizeof n->open[0]);
    if (closes) {
        assert_true(n->depth > 0);
        n->depth--;
        assert_true(strlen(n->open[n->depth]) == length && strncmp(n->open[n->depth], name, length) == 0);
    } else if (end[-2] != '/') {
        assert_true(n->depth < sizeof n->open / sizeof n->open[0]);
        memcpy(n->open[n->depth], name, length);
        n->open[n->depth++][length] = '\0';
    }
    return end;
}

/* "&" begins one of the references that need no declaration. */
static void assert_reference(const char *at)
{
    static const char *const known[] = {"&amp;", "&lt;", "&gt;", "&quot;", "&#39;"};
    for (size_t i = 0; i < sizeof known / sizeof known[0]; i++)
        if (strncmp(at, known[i], strlen(known[i])) == 0)
            return;
    fail_msg("no reference: %.20s", at);
}

/* XML's rules of tags, references and characters, as far as this page could break them. */
static void assert_well_formed(const char *text)
{
    nesting n = {.depth = 0};
    while (*text != '\0') {
        assert_true((unsigned char)*text >= 0x20 || *text == '\n' || *text == '\t');
        if (*text == '&')
            assert_reference(text);
        text = *text == '<' ? pass_tag(&n, text) : text + 1;
    }
    assert_int_equal(n.depth, 0);
}

/* The page -------------------------------------------------------------------------------------------------------- */

static char *page_of(const carried_out *o, const char *svg)
{
    printed p;
    picture_problem problem = {"gnuplot is <not> installed"};
    char bytes[1000] = "";
    picture_drawn drawn = {.bytes = svg != NULL ? bytes : NULL};
    if (svg != NULL)
        drawn.length = (size_t)snprintf(bytes, sizeof bytes, "%s", svg);
    printed_begin(&p);
    run_page(o, &(output){.system = UNITS_US}, &drawn, &problem, p.to);
    return printed_end(&p);
}

/* The number behind each of those words from one place to another. */
static void assert_numbers(const char *from, const char *to, const char *words, double most)
{
    for (const char *at = from; (at = strstr(at, words)) != NULL && at < to; at += strlen(words)) {
        char *end;
        double x = strtod(at + strlen(words), &end);
        if (end > at + strlen(words) && !(x >= -0.1 && x <= most + 0.1))
            fail_msg("%g is not between 0 and %g:\n%.200s", x, most, at);
    }
}

/* Nothing is drawn beyond the frame of its picture. */
static void assert_drawn_within(const char *text)
{
    static const char *const across[] = {" x=\"", " x1=\"", " x2=\"", " cx=\"", " d=\"M", "H"}, *const down[] = {
                                                                                                    " y=\"", " y1=\"", " y2=\"",
                                                                                                    " cy=\""};
    static const char frame[] = "viewBox=\"0 0 ";
    for (const char *at = text; (at = strstr(at, frame)) != NULL; at++) {
        char *behind;
        const char *end = strstr(at, "</svg>");
        double width = strtod(at + strlen(frame), &behind), height = strtod(behind, NULL);
        assert_true(end != NULL && width > 0 && height > 0);
        for (size_t i = 0; i < sizeof across / sizeof across[0]; i++)
            assert_numbers(at, end, across[i], width);
        for (size_t i = 0; i < sizeof down / sizeof down[0]; i++)
            assert_numbers(at, end, down[i], height);
    }
}

static void assert_sound(const char *text)
{
    assert_well_formed(text);
    assert_drawn_within(text);
    assert_int_equal(printed_times(text, "<p></p>"), 0);
    assert_int_equal(printed_times(text, "<h1>"), 1);
    assert_int_equal(printed_times(text, "<main>"), 1);
    assert_int_equal(printed_times(text, "<table"), printed_times(text, "<caption>"));
    assert_int_equal(printed_times(text, "<th>"), 0); /* every one says what it heads */
    assert_int_equal(printed_times(text, "<script"), 0);
    assert_int_equal(printed_times(text, " src="), 0);
    assert_int_equal(printed_times(text, "url("), printed_times(text, "url(#afloat)")); /* the hatch of the drawing itself */
    assert_int_equal(printed_times(text, "@import"), 0);
    assert_int_equal(printed_times(text, "<a "), 0);
}

static void pages_of_shipped_scenarios_are_sound(void **state)
{
    (void)state;
    static const char *const paths[] = {"scenarios/water-while-quiet.bath", "scenarios/salt-slug.bath",
                                        "scenarios/liquid-makeup.bath", "scenarios/bench-tank.bath"};
    for (size_t i = 0; i < sizeof paths / sizeof paths[0]; i++) {
        scenario_run c;
        carry_out(&c, paths[i], 10);
        char *text = page_of(&c.o, NULL);
        assert_sound(text);
        assert_non_null(strstr(text, "No picture could be drawn: gnuplot is &lt;not&gt; installed."));
        free(text);
        forget(&c);
    }
}

/* A string of CSS, by its number what is behind a backslash [CSS Syntax Module Level 3, 4.3.7]. */
static void assert_css_string(const char *at, const char *text)
{
    assert_true(*at++ == '"');
    for (; *text != '\0'; text++) {
        char number[7] = "", *end;
        if (*at == '\\') {
            snprintf(number, sizeof number, "%s", at + 1);
            assert_int_equal(strtol(number, &end, 16), *text);
            at += 1 + (end - number);
        } else
            assert_true(*at++ == *text);
    }
    assert_true(*at == '"');
}

static void a_hostile_title_is_only_a_title(void **state)
{
    (void)state;
    static const char *const hostile[] = {"</title></h1><script>alert(1)</script>",
                                          "\" onload=\"alert(1)",
                                          "&lt;b&gt; &amp; &#60;script&#62; ]]>",
                                          "--><!--",
                                          "\x01\x02\x1b[31m\x7f\xff\xfe\xc0\xaf \xe2\x80\xae",
                                          "' style='position:fixed",
                                          "%s%n%d"};
    static const char foot[] = "@bottom-left{content:";
    static char title[80];
    scenario_run c;
    carry_out(&c, "scenarios/water-while-quiet.bath", 10);
    char *kept_title = c.s.title, *kept_path = c.s.path;
    c.s.title = c.s.path = title;
    for (size_t i = 0; i < sizeof hostile / sizeof hostile[0]; i++) {
        snprintf(title, sizeof title, "%s", hostile[i]);
        char *text = page_of(&c.o, NULL);
        assert_sound(text);
        assert_null(strstr(text, "onload=\""));
        assert_null(strstr(text, "style='"));
        assert_null(strstr(text, "\xe2\x80\xae")); /* U+202E turns the line round */
        assert_css_string(strstr(text, foot) + strlen(foot), text_plain(title).text);
        free(text);
    }
    c.s.title = kept_title;
    c.s.path = kept_path;
    forget(&c);
}

static void a_picture_stands_in_the_page(void **state)
{
    (void)state;
    scenario_run c;
    carry_out(&c, "scenarios/water-while-boiling.bath", 10);
    char *text = page_of(&c.o, "<?xml version=\"1.0\"?>\n<svg \n viewBox=\"0 0 900 700\"\n>\n<title>Gnuplot</title>\n"
                               "<desc>Produced by GNUPLOT</desc>\n<g><title>gnuplot_plot_1a</title><path d='M0,0'/></g>\n"
                               "</svg>\n\n");
    assert_sound(text);
    assert_non_null(strstr(text, "viewBox=\"0 0 900 700\" role=\"img\" aria-labelledby=\"picture-title picture-text\""));
    assert_non_null(strstr(text, "<path d='M0,0'/></g>"));
    assert_null(strstr(text, "gnuplot_plot"));
    assert_null(strstr(text, "<?xml"));
    assert_null(strstr(text, "No picture"));
    free(text);
    text = page_of(&c.o, "<?xml version=\"1.0\"?><svg viewBox=\"0 0 1 1\" onload=\"x\"><g></svg>");
    assert_sound(text);
    assert_non_null(strstr(text, "No picture"));
    free(text);
    forget(&c);
}

/* Words and heights on the page are those of the run. */

static char *escaped(const char *text)
{
    printed p;
    printed_begin(&p);
    html h = html_to(p.to);
    html_element(&h, "dd", NULL, "%s", text);
    return printed_end(&p);
}

static void the_lines_that_decide_are_those_of_the_text(void **state)
{
    (void)state;
    static const char *const paths[] = {"scenarios/water-while-quiet.bath", "scenarios/normal-shift.bath",
                                        "scenarios/weak-bath.bath", "scenarios/bench-tank.bath"};
    for (size_t i = 0; i < sizeof paths / sizeof paths[0]; i++) {
        scenario_run c;
        carry_out(&c, paths[i], 10);
        char *text = page_of(&c.o, NULL);
        gist g = gist_of(&c.o, UNITS_US);
        assert_in_range(g.rows_count, 7, GIST_ROWS);
        for (size_t k = 0; k < g.rows_count; k++) {
            char *row = escaped(g.rows[k].says.text);
            char *end = strstr(row, "</dd>");
            assert_non_null(end);
            *end = '\0';
            assert_true(printed_times(text, strstr(row, "<dd>")) >= 1);
            free(row);
        }
        free(text);
        forget(&c);
    }
}

/* By hand, in four hours of boil: a gallon an hour is four in all, and less than a twentieth an hour, up or down, is none. */
static void water_is_told_by_the_hour(void **state)
{
    (void)state;
    static const struct {
        double given_gal, taken_gal;
        const char *says;
    } cases[] = {{4, 8, "1.0 gal/h given, steam takes 2.0: 4.0 gal short in 4 h"},
                 {4, 4, "1.0 gal/h given, steam takes 1.0: even"},
                 {0, -0.1, "0.0 gal/h given, steam takes 0.0: 0.1 gal over in 4 h"}};
    scenario_run c;
    carry_out(&c, "scenarios/normal-shift.bath", 0);
    const double gal_kg = unit_to_si(DIM_VOLUME, "gal", 1) * boil_water_density(c.s.plant.ambient.temperature_K);
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        c.o.central.balance.water =
            (boil_water_balance){.by_hand_kg = cases[i].given_gal * gal_kg, .steam_kg = cases[i].taken_gal * gal_kg};
        gist g = gist_of(&c.o, UNITS_US);
        size_t k = 0;
        while (k < g.rows_count && strcmp(g.rows[k].label, "water") != 0)
            k++;
        assert_true(k < g.rows_count);
        assert_string_equal(g.rows[k].says.text, cases[i].says);
    }
    forget(&c);
}

/* What is said behind words in a text, as a number. */
static double number_behind(const char *text, const char *element, const char *words)
{
    const char *at = strstr(text, element);
    assert_non_null(at);
    at = strstr(at, words);
    assert_non_null(at);
    return strtod(at + strlen(words), NULL);
}

/* Of the line with that class: the one tag that holds it. */
static double height_of(const char *text, const char *class)
{
    const char *at = strstr(text, class);
    assert_non_null(at);
    while (*at != '<')
        at--;
    return number_behind(at, "<line", "y1=\"");
}

/* From heights in the drawing back to the tank, within half a millimetre. */
static void the_tank_is_to_scale(void **state)
{
    (void)state;
    scenario_run c;
    carry_out(&c, "scenarios/too-heavy.bath", 10); /* the worst is at the end */
    char *text = page_of(&c.o, NULL);
    double scale = number_behind(text, "<figure class=\"tank\"", "data-scale=\""), depth_m = c.s.plant.tank.depth_m;
    double rim = height_of(text, "class=\"rim\"");
    double still_m = depth_m - (height_of(text, "class=\"still\"") - rim) / scale;
    double swelled_m = depth_m - (height_of(text, "class=\"swelled\"") - rim) / scale;
    assert_close(still_m, c.o.central.summary.still_level_end_m, 0, 5e-4);
    assert_close(swelled_m, c.o.central.rows[c.o.central.rows_count - 1].level_m, 0, 5e-4);
    assert_int_equal(printed_times(text, "class=\"rim\"") + printed_times(text, "class=\"still\"") +
                         printed_times(text, "class=\"swelled\""),
                     3);
    assert_close(number_behind(text, "class=\"bath\"", "width=\"") / scale, c.s.plant.tank.length_m, 0, 5e-4);
    char *figure = strstr(text, "<figure class=\"tank\"");
    *strstr(figure, "</figure>") = '\0';
    assert_close(depth_m, 30 * 0.0254, 1e-12, 0);
    assert_int_equal(printed_times(figure, "text-anchor=\"end\""), 6); /* 0 to 30 in: nothing finer has eight marks at most */
    assert_int_equal(printed_times(figure, ">30</text>"), 1);
    double wall = number_behind(figure, "class=\"bath\"", "x=\"") + number_behind(figure, "class=\"bath\"", "width=\"");
    static const char *const labels[] = {" rim</text>", " still surface</text>", " swelled surface</text>",
                                         " freeboard limit</text>"};
    for (size_t i = 0; i < sizeof labels / sizeof labels[0]; i++) { /* beside the tank */
        const char *at = strstr(figure, labels[i]);
        assert_non_null(at);
        while (strncmp(at, "<text", 5) != 0)
            at--;
        assert_true(number_behind(at, "<text", "x=\"") > wall);
    }
    free(text);
    forget(&c);
}

/* Water too thin to be seen in the tank is drawn beside it, ten times as thick, as is written there. */
static void thin_water_is_magnified(void **state)
{
    (void)state;
    scenario_run c;
    carry_out(&c, "scenarios/afloat-left-alone.bath", 10);
    char *text = page_of(&c.o, NULL);
    double band = number_behind(text, "class=\"afloat\"", "height=\""),
           lens = number_behind(text, "class=\"lens\"", "height=\"");
    assert_true(band > 0.5);
    assert_close(lens, 10 * band, 0, 0.06); /* both are written to a hundredth */
    assert_int_equal(printed_times(text, ">x10</text>"), 1);
    free(text);
    forget(&c);
}

/* The run sheet --------------------------------------------------------------------------------------------------- */

static void a_load_is_lifted_by_the_clock(void **state)
{
    (void)state;
    scenario_run c;
    size_t n;
    carry_out(&c, "scenarios/normal-shift.bath", 10);
    run_action *list = run_actions_of(&c.o, &n);
    assert_int_equal(n, 8 * 3); /* each hour two loads in, two out, two waters */
    for (size_t i = 1; i < n; i++)
        assert_true(list[i].time_s >= list[i - 1].time_s);
    assert_true(!list[0].lifting && list[0].line.load != NULL);
    assert_true(list[1].line.addition != NULL);
    assert_true(list[2].lifting && list[2].action == list[0].action);
    assert_close(list[2].time_s - list[0].time_s, 20 * 60, 0, 1e-6);
    free(list);
    forget(&c);
}

/* What comes out makes room for what goes in at that moment; else it stays as the scenario says it. */
static void a_load_comes_out_before_another_goes_in(void **state)
{
    (void)state;
    boil_load for_a_minute = boil_load_default();
    for_a_minute.immersed_s = 60;
    boil_action actions[] = {{.time_s = 60, .kind = BOIL_ACTION_LOAD, .is.load = for_a_minute},
                             {.time_s = 120, .kind = BOIL_ACTION_LOAD, .is.load = for_a_minute},
                             {.time_s = 120, .kind = BOIL_ACTION_WATER}};
    boil_act_result acts[] = {{60, BOIL_ACT_DONE}, {120, BOIL_ACT_DONE}, {120, BOIL_ACT_DONE}};
    scenario s = {.schedule = {.actions = actions, .count = 3, .duration_s = 300}};
    carried_out o = {.scenario = &s, .central = {.acts = acts, .acts_count = 3, .end_s = 300}};
    size_t n;
    run_action *list = run_actions_of(&o, &n);
    assert_int_equal(n, 5);
    const struct {
        double time_s;
        size_t action;
        bool lifting;
    } order[] = {{60, 0, false}, {120, 0, true}, {120, 1, false}, {120, 2, false}, {180, 1, true}};
    for (size_t i = 0; i < n; i++) {
        assert_close(list[i].time_s, order[i].time_s, 0, 1e-9);
        assert_int_equal(list[i].action, order[i].action);
        assert_int_equal(list[i].lifting, order[i].lifting);
    }
    free(list);
}

static void write_many(const char *path)
{
    FILE *f = fopen(path, "w");
    assert_non_null(f);
    fputs("duration = 4 h\n[tank]\nshape = box\nlength = 72 in\nwidth = 36 in\ndepth = 30 in\nlevel = 20 in\n"
          "[bath]\nsalts = 100 % NaOH\nboiling point = 285 degF\n[heat]\ninput = 330 kBtu/h\n[schedule]\n"
          "every 2 min from 0:01 to 3:59  load 1 lb, bar 1/2 in, for 1 min\n1:00 heat 90 %\n",
          f);
    assert_int_equal(fclose(f), 0);
}

static void many_alike_are_one_order(void **state)
{
    (void)state;
    char path[] = "/tmp/boilback-test-XXXXXX";
    scenario_run c;
    size_t n;
    int file = mkstemp(path);
    assert_true(file >= 0);
    close(file);
    write_many(path);
    carry_out(&c, path, 10);
    run_action *list = run_actions_of(&c.o, &n);
    assert_int_equal(n, 3);
    assert_int_equal(list[0].times, 120);
    assert_close(list[0].last_s, 239 * 60, 0, 1e-6);
    assert_true(list[1].lifting && list[1].times == 120);
    assert_int_equal(list[2].times, 1);
    free(list);
    char *text = page_of(&c.o, NULL);
    assert_sound(text);
    assert_true(strlen(text) < 100000); /* bars of each in both charts */
    free(text);
    forget(&c);
    unlink(path);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(texts_are_escaped),
        cmocka_unit_test(elements_close_in_their_order),
        cmocka_unit_test(pages_of_shipped_scenarios_are_sound),
        cmocka_unit_test(a_hostile_title_is_only_a_title),
        cmocka_unit_test(a_picture_stands_in_the_page),
        cmocka_unit_test(the_lines_that_decide_are_those_of_the_text),
        cmocka_unit_test(water_is_told_by_the_hour),
        cmocka_unit_test(the_tank_is_to_scale),
        cmocka_unit_test(thin_water_is_magnified),
        cmocka_unit_test(a_load_is_lifted_by_the_clock),
        cmocka_unit_test(a_load_comes_out_before_another_goes_in),
        cmocka_unit_test(many_alike_are_one_order),
    };
    return cmocka_run_group_tests_name("html", tests, NULL, NULL);
}
