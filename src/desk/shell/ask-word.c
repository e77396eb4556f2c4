/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/ask-word.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

typedef struct
{
  AdwMessageDialog *dialog;
  GtkEditable *row;
  LbAnswered answered;
  gpointer data;
  GDestroyNotify free_data;
} Asking;

static void
asking_free (gpointer data, GClosure *closure)
{
  Asking *asking = data;

  if (asking->free_data != NULL)
    asking->free_data (asking->data);
  g_free (asking);
}

static char *
word_of (const Asking *asking)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (asking->row)));
}

static void
changed_cb (Asking *asking)
{
  g_autofree char *word = word_of (asking);

  adw_message_dialog_set_response_enabled (asking->dialog, "accept", *word != '\0');
  if (adw_message_dialog_has_response (asking->dialog, "also"))
    adw_message_dialog_set_response_enabled (asking->dialog, "also", *word != '\0');
}

static void
entered_cb (Asking *asking)
{
  g_autofree char *word = word_of (asking);
  GtkWindow *dialog = GTK_WINDOW (asking->dialog);

  if (*word == '\0')
    return;
  /* Unlike a button, this does not close the dialog. */
  adw_message_dialog_response (asking->dialog, "accept");
  gtk_window_destroy (dialog);
}

static void
response_cb (Asking *asking, const char *response)
{
  g_autofree char *word = word_of (asking);

  if (*word != '\0' && !g_str_equal (response, "cancel"))
    asking->answered (word, g_str_equal (response, "also"), asking->data);
}

static GtkWidget *
make_list (Asking *asking, const LbQuestion *question)
{
  GtkWidget *list = gtk_list_box_new ();
  GtkWidget *row = adw_entry_row_new ();

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), question->label);
  if (question->initial != NULL)
    gtk_editable_set_text (GTK_EDITABLE (row), question->initial);
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (list, "boxed-list");
  gtk_list_box_append (GTK_LIST_BOX (list), row);
  asking->row = GTK_EDITABLE (row);
  return list;
}

void
lb_ask_word (GtkWidget *from,
             const LbQuestion *question,
             LbAnswered answered,
             gpointer data,
             GDestroyNotify free_data)
{
  g_return_if_fail (GTK_IS_WIDGET (from));
  g_return_if_fail (question != NULL);
  g_return_if_fail (answered != NULL);

  GtkRoot *root = gtk_widget_get_root (from);
  AdwMessageDialog *dialog = ADW_MESSAGE_DIALOG (adw_message_dialog_new (
    GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, question->heading, question->body));
  Asking *asking = g_new (Asking, 1);

  *asking = (Asking){
    .dialog = dialog,
    .answered = answered,
    .data = data,
    .free_data = free_data,
  };
  adw_message_dialog_set_extra_child (dialog, make_list (asking, question));
  adw_message_dialog_add_response (dialog, "cancel", _ ("_Cancel"));
  if (question->also != NULL)
    adw_message_dialog_add_response (dialog, "also", question->also);
  adw_message_dialog_add_response (dialog, "accept", question->accept);
  adw_message_dialog_set_response_appearance (dialog, "accept", ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (dialog, "accept");
  adw_message_dialog_set_close_response (dialog, "cancel");
  g_signal_connect_data (dialog, "response", G_CALLBACK (response_cb), asking, asking_free,
                         G_CONNECT_SWAPPED);
  g_signal_connect_swapped (asking->row, "changed", G_CALLBACK (changed_cb), asking);
  g_signal_connect_swapped (asking->row, "entry-activated", G_CALLBACK (entered_cb), asking);
  changed_cb (asking);
  gtk_window_present (GTK_WINDOW (dialog));
  gtk_widget_grab_focus (GTK_WIDGET (asking->row));
}
