/* SPDX-License-Identifier: MIT */
#include "sy-standing.h"

#include <math.h>

#include "sy-date.h"

#define EXAMINED "UK LOLER 1998 reg. 9(3); 29 CFR 1910.184(d)"

double
sy_standing (SySink *sink, const char *subject, const char *due, int withdrawn, double as_of)
{
  bool named = *subject != '\0';
  double day;

  if (withdrawn == 1)
    sy_sink_note_on (sink, named ? "element-withdrawn" : "withdrawn", SY_NOTE_REFUSED, subject);
  if (due == NULL || !sy_date_read (due, &day))
    {
      sy_sink_note_on (sink, named ? "element-no-due" : "no-due", SY_NOTE_NEEDED, subject);
      return INFINITY;
    }
  if (isnan (as_of))
    sy_sink_note (sink, "day-not-known", SY_NOTE_NEEDED);
  else if (as_of > day)
    {
      SyNote *out = sy_sink_note_on (sink, named ? "element-out-of-date" : "out-of-date", SY_NOTE_REFUSED, subject);
      sy_note_arg (out, SY_KIND_DATE, as_of);
      sy_note_arg (out, SY_KIND_DATE, day);
      sy_note_source (out, NULL, EXAMINED, false);
    }
  return day;
}
