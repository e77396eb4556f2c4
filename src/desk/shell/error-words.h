/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What an error means and what to do, in the reader's language, with the error's own words where
 * they say more; to be freed. */
char *lb_error_words (const GError *error);

/* A heading for a file that could not be opened: "This file is damaged"; borrowed. */
const char *lb_error_heading (const GError *error);

G_END_DECLS
