/* files/shipped.h -- where that lies which comes with the program: scripts of pictures, scenarios, lessons. */
#ifndef FILES_SHIPPED_H
#define FILES_SHIPPED_H

/* The whole path of a file or folder, "plots/run.gp": below BOILBACK_DATA; where that is not set beside an installed program, else in
   the source tree that it was built in. To be freed; NULL when it is not there. */
char *shipped_place(const char *what);

#endif
