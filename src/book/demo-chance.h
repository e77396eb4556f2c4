/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Numbers that look like chance and are the same everywhere: SplitMix64 (Steele, Lea, Flood, “Fast
 * splittable pseudorandom number generators”, 2014). Only whole numbers come out, so that no
 * rounding of a machine's own gets in. */
typedef struct
{
  guint64 state;
} LbChance;

static inline guint64
lb_chance_next (LbChance *chance)
{
  guint64 z = (chance->state += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15));

  z = (z ^ (z >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return z ^ (z >> 31);
}

/* From @least to @most, both possible. */
static inline int
lb_chance_between (LbChance *chance, int least, int most)
{
  return least + (int) (lb_chance_next (chance) % (guint64) (most - least + 1));
}

G_END_DECLS
