/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Invariant: the text differs from "stored" only while somebody types or after a refusal. Storing
 * a text makes it the stored one before the owner is told, so that the owner's own "show" during
 * the storing finds a clean row and may write the value in its tidy form. */
#include "desk/sheet/checked-row.h"

#include "desk/shell/say.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  GtkWidget *note_row;
  GtkLabel *note_label; /* in note_row */
  char *note;
  char *stored; /* NULL before anything was shown */
} LbCheckedRowPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (LbCheckedRow, lb_checked_row, ADW_TYPE_ENTRY_ROW)

static LbCheckedRowPrivate *
get_private (LbCheckedRow *self)
{
  return lb_checked_row_get_instance_private (self);
}

static const char *
text_of (LbCheckedRow *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self));
}

static gboolean
is_touched (LbCheckedRow *self)
{
  LbCheckedRowPrivate *priv = get_private (self);
  return g_strcmp0 (text_of (self), priv->stored) != 0;
}

static void
set_class (GtkWidget *widget, const char *name, gboolean has)
{
  if (has)
    gtk_widget_add_css_class (widget, name);
  else
    gtk_widget_remove_css_class (widget, name);
}

/* @error and @doubt: at most one of them. */
static void
say_under (LbCheckedRow *self, const char *error, const char *doubt)
{
  LbCheckedRowPrivate *priv = get_private (self);
  const char *said = error != NULL ? error : doubt != NULL ? doubt : priv->note;
  const gboolean has_line = said != NULL && *said != '\0';

  gtk_label_set_label (priv->note_label, has_line ? said : "");
  gtk_widget_set_visible (priv->note_row, has_line);
  set_class (GTK_WIDGET (self), "has-note", has_line);
  set_class (GTK_WIDGET (self), "error", error != NULL);
  set_class (GTK_WIDGET (self), "warning", error == NULL && doubt != NULL);
  set_class (GTK_WIDGET (priv->note_label), "error", error != NULL);
  set_class (GTK_WIDGET (priv->note_label), "warning", error == NULL && doubt != NULL);
  set_class (GTK_WIDGET (priv->note_label), "dim-label", error == NULL && doubt == NULL);
  gtk_accessible_update_state (
    GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_INVALID,
    error != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  has_line ? said : "", -1);
}

static gboolean
check (LbCheckedRow *self)
{
  LbCheckedRowPrivate *priv = get_private (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *doubt = NULL;

  if (priv->stored == NULL)
    return FALSE;
  if (!LB_CHECKED_ROW_GET_CLASS (self)->check (self, text_of (self), &doubt, &error)) {
    say_under (self, error->message, NULL);
    return FALSE;
  }
  say_under (self, NULL, doubt);
  return TRUE;
}

static void
changed_cb (LbCheckedRow *self)
{
  check (self);
}

static void
commit_cb (LbCheckedRow *self)
{
  lb_checked_row_commit (self);
}

static gboolean
escape_cb (GtkWidget *widget, GVariant *args, gpointer data)
{
  LbCheckedRow *self = LB_CHECKED_ROW (widget);

  if (!is_touched (self))
    return FALSE;
  lb_checked_row_revert (self);
  return TRUE;
}

static void
lb_checked_row_dispose (GObject *object)
{
  LbCheckedRow *self = LB_CHECKED_ROW (object);
  LbCheckedRowPrivate *priv = get_private (self);

  /* Not asked any more: the owner is going. */
  g_clear_pointer (&priv->stored, g_free);
  g_clear_object (&priv->note_row);
  G_OBJECT_CLASS (lb_checked_row_parent_class)->dispose (object);
}

static void
lb_checked_row_finalize (GObject *object)
{
  g_free (get_private (LB_CHECKED_ROW (object))->note);
  G_OBJECT_CLASS (lb_checked_row_parent_class)->finalize (object);
}

static void
lb_checked_row_class_init (LbCheckedRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_checked_row_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_checked_row_finalize;
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, escape_cb, NULL);
}

static void
lb_checked_row_init (LbCheckedRow *self)
{
  LbCheckedRowPrivate *priv = get_private (self);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (self), FALSE);

  priv->note_label = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_wrap (priv->note_label, TRUE);
  gtk_label_set_xalign (priv->note_label, 0);
  gtk_widget_add_css_class (GTK_WIDGET (priv->note_label), "small");
  /* A row of the same kind, or a group would put it outside its list. */
  priv->note_row = g_object_ref_sink (adw_preferences_row_new ());
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (priv->note_row), FALSE);
  gtk_widget_set_focusable (priv->note_row, FALSE);
  gtk_widget_add_css_class (priv->note_row, "note");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (priv->note_row), GTK_WIDGET (priv->note_label));
  gtk_widget_set_visible (priv->note_row, FALSE);

  g_signal_connect (self, "changed", G_CALLBACK (changed_cb), NULL);
  g_signal_connect (self, "entry-activated", G_CALLBACK (commit_cb), NULL);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (commit_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

GtkWidget *
lb_checked_row_get_note_row (LbCheckedRow *self)
{
  LbCheckedRowPrivate *priv = get_private (self);
  g_return_val_if_fail (LB_IS_CHECKED_ROW (self), NULL);

  return priv->note_row;
}

void
lb_checked_row_set_note (LbCheckedRow *self, const char *note)
{
  LbCheckedRowPrivate *priv = get_private (self);
  g_return_if_fail (LB_IS_CHECKED_ROW (self));

  if (g_strcmp0 (priv->note, note) == 0)
    return;
  g_free (priv->note);
  priv->note = g_strdup (note);
  if (priv->stored != NULL)
    check (self);
  else
    say_under (self, NULL, NULL);
}

static void
set_stored (LbCheckedRow *self, const char *text)
{
  LbCheckedRowPrivate *priv = get_private (self);
  g_autofree char *before = priv->stored;

  priv->stored = g_strdup (text);
  if (g_strcmp0 (text_of (self), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self), text);
  else
    check (self);
}

void
lb_checked_row_show (LbCheckedRow *self, const char *text)
{
  LbCheckedRowPrivate *priv = get_private (self);
  g_return_if_fail (LB_IS_CHECKED_ROW (self));
  g_return_if_fail (text != NULL);

  if (priv->stored == NULL || !is_touched (self)) {
    set_stored (self, text);
    return;
  }
  g_free (priv->stored);
  priv->stored = g_strdup (text);
  check (self);
}

gboolean
lb_checked_row_commit (LbCheckedRow *self)
{
  LbCheckedRowPrivate *priv = get_private (self);
  g_autofree char *before = NULL;
  g_autofree char *text = NULL;
  GError *error = NULL;

  g_return_val_if_fail (LB_IS_CHECKED_ROW (self), FALSE);

  if (priv->stored == NULL || !is_touched (self))
    return TRUE;
  if (!check (self))
    return FALSE;
  before = g_steal_pointer (&priv->stored);
  text = g_strdup (text_of (self));
  priv->stored = g_strdup (text);
  if (LB_CHECKED_ROW_GET_CLASS (self)->store (self, text, &error))
    return TRUE;
  g_free (priv->stored);
  priv->stored = g_steal_pointer (&before);
  lb_say_error (GTK_WIDGET (self), _ ("That was not stored"), error);
  return FALSE;
}

void
lb_checked_row_revert (LbCheckedRow *self)
{
  LbCheckedRowPrivate *priv = get_private (self);
  g_return_if_fail (LB_IS_CHECKED_ROW (self));

  if (priv->stored != NULL && is_touched (self))
    gtk_editable_set_text (GTK_EDITABLE (self), priv->stored);
}
