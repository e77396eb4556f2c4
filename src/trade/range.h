/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A figure with the range it may fall in; NAN where not known. */
typedef struct
{
  double likely, low, high;
} LbRange;
