/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Times of one thing done again and again, in µs. */
typedef struct
{
  GArray *times; /* gint64 */
  gint64 began_us;
  gboolean is_own; /* the thread's processor time rather than the clock on the wall */
} Stopwatch;

void stopwatch_init (Stopwatch *watch);

/* For work that waits for nothing: what else the machine does is left out. */
void stopwatch_init_own (Stopwatch *watch);
void stopwatch_clear (Stopwatch *watch);
void stopwatch_begin (Stopwatch *watch);
void stopwatch_end (Stopwatch *watch);
void stopwatch_add (Stopwatch *watch, gint64 us);

double stopwatch_median (Stopwatch *watch);

/* One line: name, least, median and most in ms, and how often. */
void stopwatch_print (Stopwatch *watch, const char *name);

/* "name: 1.23 times (at most 1.50 wanted)": printed, never asserted. */
void stopwatch_print_ratio (const char *name, double ratio, double wanted);

G_END_DECLS
