/* practise/back_page.h -- a shift as the page of a replay (replay/page): as it was worked, and beside it the same shift with each bad
   act done with care (lesson/debrief.h); alone, where no act was a bad one. */
#ifndef PRACTISE_BACK_PAGE_H
#define PRACTISE_BACK_PAGE_H

#include "practise/shift.h"

/* BOIL_OK; or a failure of the runs it is made of. *written: whether the file is there; else the complaint is made. */
boil_outcome back_page_write(const shift *s, unit_system u, const char *path, bool *written);

#endif
