/* base/clock.h -- how long people wait, for progress and for what must not take longer: nothing that is computed hangs on it. */
#ifndef BASE_CLOCK_H
#define BASE_CLOCK_H

double clock_now_s(void); /* of a clock that nobody sets */

#endif
