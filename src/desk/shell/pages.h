/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* The pages of a window, in the order of use. A page is a widget with the properties "job" (LbJob,
 * nullable) and "selection" (LbSelection); the window sets both. To add one: a line in pages.c. */
typedef struct
{
  const char *name;  /* in the stack, and of the action "win.page-…" */
  const char *title; /* msgid, with the mnemonic */
  const char *icon;
  GType (*get_type) (void);
} LbPageKind;

const LbPageKind *lb_page_kinds (gsize *out_n);

G_END_DECLS
