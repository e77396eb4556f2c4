/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "stopwatch.h"

#include <time.h>

static gint64
now_us (const Stopwatch *watch)
{
  struct timespec now;

  if (!watch->is_own)
    return g_get_monotonic_time ();
  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (gint64) now.tv_sec * G_USEC_PER_SEC + now.tv_nsec / 1000;
}

void
stopwatch_init (Stopwatch *watch)
{
  *watch = (Stopwatch){ .times = g_array_new (FALSE, FALSE, sizeof (gint64)) };
}

void
stopwatch_init_own (Stopwatch *watch)
{
  stopwatch_init (watch);
  watch->is_own = TRUE;
}

void
stopwatch_clear (Stopwatch *watch)
{
  g_clear_pointer (&watch->times, g_array_unref);
}

void
stopwatch_begin (Stopwatch *watch)
{
  watch->began_us = now_us (watch);
}

void
stopwatch_end (Stopwatch *watch)
{
  stopwatch_add (watch, now_us (watch) - watch->began_us);
}

void
stopwatch_add (Stopwatch *watch, gint64 us)
{
  g_array_append_val (watch->times, us);
}

static int
by_size (gconstpointer a, gconstpointer b)
{
  const gint64 one = *(const gint64 *) a;
  const gint64 other = *(const gint64 *) b;

  return (one > other) - (one < other);
}

static double
ranked (Stopwatch *watch, guint rank)
{
  g_array_sort (watch->times, by_size);

  return (double) g_array_index (watch->times, gint64, rank);
}

double
stopwatch_median (Stopwatch *watch)
{
  g_return_val_if_fail (watch->times->len > 0, 0);

  return ranked (watch, watch->times->len / 2);
}

void
stopwatch_print (Stopwatch *watch, const char *name)
{
  const guint n = watch->times->len;

  g_print ("# %-44s %9.3f /%9.3f /%9.3f ms, n = %u\n", name, ranked (watch, 0) / 1000,
           stopwatch_median (watch) / 1000, ranked (watch, n - 1) / 1000, n);
}

void
stopwatch_print_ratio (const char *name, double ratio, double wanted)
{
  g_print ("# %s: %.2f times (at most %.2f wanted)%s\n", name, ratio, wanted,
           ratio > wanted ? "  <-- MORE THAN WANTED" : "");
}
