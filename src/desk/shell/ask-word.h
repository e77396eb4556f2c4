/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Asks one thing in a dialog: why, or who. */
typedef struct
{
  const char *heading;
  const char *body;
  const char *label;   /* of the line to type in */
  const char *initial; /* what stands in it, NULL for nothing */
  const char *accept;  /* button, with a mnemonic */
  const char *also;    /* a second one, which does more; NULL for none */
} LbQuestion;

/* @also: by the second button. @word is without blanks about it and never empty. */
typedef void (*LbAnswered) (const char *word, gboolean also, gpointer data);

/**
 * lb_ask_word:
 * @from: the widget that asks
 * @answered: called when one of the buttons was pressed, not when it was cancelled
 * @free_data: called in any case when the dialog is gone
 */
void lb_ask_word (GtkWidget *from,
                  const LbQuestion *question,
                  LbAnswered answered,
                  gpointer data,
                  GDestroyNotify free_data);

G_END_DECLS
