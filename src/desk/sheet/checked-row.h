/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* A row to type one value in; subclasses know what it is. It is checked with every key and stored on Enter or when the focus
 * leaves; Escape brings back what is stored. A line under it says what is wrong, or the note. */
#define LB_TYPE_CHECKED_ROW (lb_checked_row_get_type ())
G_DECLARE_DERIVABLE_TYPE (LbCheckedRow, lb_checked_row, LB, CHECKED_ROW, AdwEntryRow)

struct _LbCheckedRowClass
{
  AdwEntryRowClass parent_class;

  /* Whether @text can be stored; %FALSE with a sentence when not. A sentence in @out_doubt, to be
   * freed, for what can be stored and still looks wrong. */
  gboolean (*check) (LbCheckedRow *self, const char *text, char **out_doubt, GError **error);

  /* Stores @text, which has passed the check. */
  gboolean (*store) (LbCheckedRow *self, const char *text, GError **error);
};

/* The line under the row, to be put after it in the same list; hidden while it has nothing to
 * say. */
GtkWidget *lb_checked_row_get_note_row (LbCheckedRow *self);
void lb_checked_row_set_note (LbCheckedRow *self, const char *note);

/* What is stored now; what somebody is typing is left alone. */
void lb_checked_row_show (LbCheckedRow *self, const char *text);

/* Stores what was typed, if anything; %FALSE when it was refused and still stands there. */
gboolean lb_checked_row_commit (LbCheckedRow *self);

/* Forgets what was typed. */
void lb_checked_row_revert (LbCheckedRow *self);

G_END_DECLS
