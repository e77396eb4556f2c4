/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/ledger.h"

G_BEGIN_DECLS

/* What happens to the demo's crew from outside, as tables. */

/* A shift's working minutes, from first man in to tools up. */
#define LB_DEMO_SHIFT_MIN 480

typedef struct
{
  int shift;        /* from 0 */
  LbEntryKind kind; /* a delay, a fault or a note */
  const char *what;
  int minutes;
  const char *note;
  const char *more; /* who bears the delay, what was done about the fault; NULL for not said */
} LbDemoEvent;

typedef struct
{
  const char *wind, *sea, *current, *visibility;
} LbDemoWeather;

const LbDemoEvent *lb_demo_events (gsize *out_n);
const LbDemoWeather *lb_demo_weathers (gsize *out_n); /* in which work goes on */
const LbDemoWeather *lb_demo_foul_weather (void);

G_END_DECLS
