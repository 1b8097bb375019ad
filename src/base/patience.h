/* base/patience.h -- a line on standard error, where that is a terminal, that an answer is being sought: from the first whole second
   on, once a second; nobody knows how long a search is, so it says how long it has been. The signal of a clock, so that nothing
   that searches need know of it. */
#ifndef BASE_PATIENCE_H
#define BASE_PATIENCE_H

void patience_begin(void);

/* Takes the line away again; does nothing where none was begun. Before anything else is said. */
void patience_end(void);

#endif
