/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shift/limit-bar.h"

#include <glib/gi18n-lib.h>

#define WIDTH_PX   96
#define NOTE_CHARS 32

static GtkWidget *
make_bar (double spent_s, double limit_s)
{
  GtkWidget *bar = gtk_level_bar_new_for_interval (0, limit_s);

  gtk_level_bar_set_value (GTK_LEVEL_BAR (bar), MIN (spent_s, limit_s));
  /* GTK paints a full bar as good news; here it is none. */
  gtk_level_bar_remove_offset_value (GTK_LEVEL_BAR (bar), GTK_LEVEL_BAR_OFFSET_LOW);
  gtk_level_bar_remove_offset_value (GTK_LEVEL_BAR (bar), GTK_LEVEL_BAR_OFFSET_HIGH);
  gtk_level_bar_remove_offset_value (GTK_LEVEL_BAR (bar), GTK_LEVEL_BAR_OFFSET_FULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (bar), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Bottom time against the no-stop limit"), -1);
  gtk_widget_set_size_request (bar, WIDTH_PX, -1);
  return bar;
}

GtkWidget *
lb_limit_words_new (const char *said)
{
  GtkWidget *label = gtk_label_new (said);

  gtk_widget_add_css_class (label, "caption");
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), NOTE_CHARS);
  return label;
}

GtkWidget *
lb_limit_bar_new (double spent_s, double limit_s, const char *said, const char *note)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *words = lb_limit_words_new (said);

  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (box), make_bar (spent_s, limit_s));
  gtk_box_append (GTK_BOX (box), words);
  if (spent_s > limit_s)
    gtk_widget_add_css_class (words, "error");
  if (note != NULL)
    gtk_box_append (GTK_BOX (box), lb_limit_words_new (note));
  return box;
}
