/* base/cube_root.h -- a cube root for the innermost loop: within two units of the last place, at a third of the library's cost. */
#ifndef BOIL_BASE_CUBE_ROOT_H
#define BOIL_BASE_CUBE_ROOT_H

double boil_cube_root(double x); /* of any number */

#endif
