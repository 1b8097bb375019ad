#include "commands/run/page/sections.h"

#include "describe/report.h"

void page_limits(html *h)
{
    html_open(h, "section", "aria-labelledby=\"limits\"");
    html_element(h, "h2", "id=\"limits\"", "What the model is, and what it is not");
    html_element(h, "p", NULL, "%s", report_purpose);
    html_open(h, "ul", NULL);
    for (size_t i = 0; report_limits[i] != NULL; i++)
        html_element(h, "li", NULL, "%s", report_limits[i]);
    html_close(h);
    html_close(h);
}
