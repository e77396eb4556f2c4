/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"

G_BEGIN_DECLS

/* A job as large as one gets: @n_piles on a grid, and @n_entries over 400 shifts, in which piles
 * have bars burned and steps reached, each as far as its own pace has brought it. Written in one transaction; the same every time. */
LbBook *big_job_create (const char *path, guint n_piles, guint n_entries, GError **error);

/* A pile of the big job, as a plain struct. */
void big_job_pile (guint i, LbPile *out_pile, char mark[16]);

G_END_DECLS
