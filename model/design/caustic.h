/* design/caustic.h -- where carbon steel stands on the caustic soda service chart, which tells where caustic has cracked it. SI
   units.

   The chart was drawn from field experience [NACE Corrosion Data Survey, 5th ed., as a university's corrosion pages and
   technical bulletins give it; the chart itself was not read]: up to its first line welds need no stress relief, up to its
   second they do, and beyond that nickel alloys are named whatever the relief. First line at 50 %: 48 degC or 120 degF in one
   bulletin, 50 degC or 122 degF in two others: the lower. It lies higher for weaker liquid, so that this warns early. Second
   line: 180 to 240 degF, from memory: the lower. Cracking goes by the metal's temperature, not by the bath's. */
#ifndef BOIL_DESIGN_CAUSTIC_H
#define BOIL_DESIGN_CAUSTIC_H

#define BOIL_CAUSTIC_FIRST_LINE_K 322.0  /* 48.9 degC, 120 degF */
#define BOIL_CAUSTIC_SECOND_LINE_K 355.4 /* 82.2 degC, 180 degF */

typedef enum { BOIL_CAUSTIC_BELOW, BOIL_CAUSTIC_PAST_FIRST, BOIL_CAUSTIC_PAST_SECOND } boil_caustic_zone;

boil_caustic_zone boil_caustic_zone_of(double wetted_metal_K);

double boil_caustic_over(double wetted_metal_K); /* K above the first line; negative below it */

#endif
