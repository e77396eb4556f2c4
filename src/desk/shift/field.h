/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A cell of the shift's sheet: what it is about in small letters, and under that the line to type in.
 *
 * Signals: "changed" with every key; "activated" at Enter; and "said" (text) of a field that shows
 * what is stored, when something else was typed and Enter pressed or the field left. */
#define LB_TYPE_FIELD (lb_field_get_type ())
G_DECLARE_FINAL_TYPE (LbField, lb_field, LB, FIELD, GtkBox)

void lb_field_set_caption (LbField *self, const char *caption);
const char *lb_field_get_caption (LbField *self);
const char *lb_field_get_text (LbField *self);
void lb_field_set_text (LbField *self, const char *text);
GtkWidget *lb_field_get_entry (LbField *self);

/* What is stored now; what somebody is typing is left alone. */
void lb_field_show (LbField *self, const char *stored);

/* Marks what was typed as wrong, with a sentence, or as right again with %NULL. After Enter the hands
 * are brought back to it; who left it is not held. */
void lb_field_mark (LbField *self, const GError *error);

/* Words of which the beginning is enough: one that begins no other is completed at Tab or Enter. */
void lb_field_complete (LbField *self, const char *const *words);

G_END_DECLS
