/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/assumption.h"
#include "trade/pile.h"

#include <glib.h>

/* A pile of any kind, known in part and burned in part, and the assumptions of a job of any kind. */
typedef struct
{
  LbPile pile;
  LbAssumptions assumptions;
  LbBarSet burned;
  guint n_unplaced;
} LbChanceCut;

void lb_chance_cut (LbChanceCut *cut, GRand *rand);
