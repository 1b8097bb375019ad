#include "commands/run/html_common.h"

void page_severity(html *h, boil_severity s, bool only_possible)
{
    static const char *const classes[] = {[BOIL_NOTICE] = "class=\"signal notice\"",
                                          [BOIL_CAUTION] = "class=\"signal caution\"",
                                          [BOIL_WARNING] = "class=\"signal warning\"",
                                          [BOIL_DANGER] = "class=\"signal danger\""};
    html_element(h, "strong", classes[s], "%s", boil_severity_word(s));
    if (only_possible)
        html_element(h, "small", NULL, " possible");
}

void page_table(html *h, const char *label, const char *attributes, const char *const heads[])
{
    html_open(h, "div", "class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"table, may scroll sideways\"");
    html_open(h, "table", attributes);
    html_element(h, "caption", NULL, "%s", label);
    html_open(h, "thead", NULL);
    html_open(h, "tr", NULL);
    for (; *heads != NULL; heads++)
        html_element(h, "th", "scope=\"col\"", "%s", *heads);
    html_close(h);
    html_close(h);
    html_open(h, "tbody", NULL);
}

void page_table_end(html *h)
{
    html_close(h);
    html_close(h);
    html_close(h);
}

void page_row_head(html *h, const char *text)
{
    html_element(h, "th", "scope=\"row\"", "%s", text);
}
