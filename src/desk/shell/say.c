/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/say.h"

#include "desk/shell/error-words.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

/* Long enough to be read in a container with a headlamp on. */
#define TOAST_SECONDS 5

/* Of a line beside the sheet's edges, and beside the button too. */
#define LINE_CHARS      28
#define LINE_CHARS_UNDO 18

static GtkWidget *
find_overlay (GtkWidget *parent)
{
  for (GtkWidget *child = gtk_widget_get_first_child (parent); child != NULL;
       child = gtk_widget_get_next_sibling (child))
  {
    GtkWidget *found = ADW_IS_TOAST_OVERLAY (child) ? child : find_overlay (child);

    if (found != NULL)
      return found;
  }
  return NULL;
}

/* The overlay @from stands in, or that of the window its dialog belongs to. */
static GtkWidget *
toast_overlay_of (GtkWidget *from)
{
  GtkWidget *overlay = gtk_widget_get_ancestor (from, ADW_TYPE_TOAST_OVERLAY);
  GtkRoot *root = gtk_widget_get_root (from);

  while (overlay == NULL && GTK_IS_WINDOW (root)) {
    overlay = find_overlay (GTK_WIDGET (root));
    root = GTK_ROOT (gtk_window_get_transient_for (GTK_WINDOW (root)));
  }
  return overlay;
}

/* On as many lines as it takes: the way out that a sentence offers is often its end. */
static GtkWidget *
sentence (const char *text, int n_chars)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  /* The overlay gives a toast the width it would like, so it must like one that there is. */
  gtk_label_set_max_width_chars (GTK_LABEL (label), n_chars);
  gtk_widget_add_css_class (label, "heading");
  return label;
}

void
lb_say (GtkWidget *from, const char *text, gboolean undo)
{
  GtkWidget *overlay;
  AdwToast *toast;

  g_return_if_fail (GTK_IS_WIDGET (from));
  g_return_if_fail (text != NULL);

  overlay = toast_overlay_of (from);
  if (overlay == NULL) {
    g_info ("%s", text);
    return;
  }
  toast = adw_toast_new ("");
  adw_toast_set_custom_title (toast, sentence (text, undo ? LINE_CHARS_UNDO : LINE_CHARS));
  adw_toast_set_timeout (toast, TOAST_SECONDS);
  if (undo) {
    adw_toast_set_button_label (toast, _ ("Take Back"));
    adw_toast_set_action_name (toast, "win.take-back");
  }
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (overlay), toast);
}

void
lb_say_error (GtkWidget *from, const char *heading, GError *error)
{
  g_autoptr (GError) own = error;
  g_autofree char *words = NULL;
  GtkRoot *root;
  GtkWidget *dialog;

  g_return_if_fail (GTK_IS_WIDGET (from));
  g_return_if_fail (error != NULL);

  words = lb_error_words (own);
  root = gtk_widget_get_root (from);
  dialog = adw_message_dialog_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, NULL, NULL);
  adw_message_dialog_set_heading (ADW_MESSAGE_DIALOG (dialog),
                                  heading != NULL ? heading : lb_error_heading (own));
  adw_message_dialog_set_body (ADW_MESSAGE_DIALOG (dialog), words);
  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Close"));
  gtk_window_present (GTK_WINDOW (dialog));
}
