/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/visibility-row.h"

#include "desk/shell/say.h"

#include <glib/gi18n-lib.h>

/* The first choice is the visibility said last; the classes follow. */
#define AS_SAID     0
#define FIRST_CLASS 1

struct _LbVisibilityRow
{
  AdwComboRow parent_instance;

  GtkStringList *choices;
  LbJob *job;
  gboolean is_showing; /* what is selected is not a person's choice */
};

G_DEFINE_FINAL_TYPE (LbVisibilityRow, lb_visibility_row, ADW_TYPE_COMBO_ROW)

static const char *
name_of (LbVisibility visibility)
{
  return g_dgettext (GETTEXT_PACKAGE, lb_visibility_name (visibility));
}

static void
selected_cb (LbVisibilityRow *self)
{
  const guint choice = adw_combo_row_get_selected (ADW_COMBO_ROW (self));
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);
  GError *error = NULL;

  if (self->is_showing || self->job == NULL || choice == GTK_INVALID_LIST_POSITION)
    return;
  draft.what = LB_SETTING_VISIBILITY;
  draft.note = choice == AS_SAID ? "" : lb_visibility_key ((LbVisibility) (choice - FIRST_CLASS));
  if (!lb_job_record (self->job, &draft, 1, &error)) {
    lb_say_error (GTK_WIDGET (self), _ ("The visibility was not changed"), error);
    lb_visibility_row_show (self, self->job);
  }
}

static void
lb_visibility_row_dispose (GObject *object)
{
  LbVisibilityRow *self = LB_VISIBILITY_ROW (object);

  g_clear_object (&self->choices);
  g_clear_object (&self->job);
  G_OBJECT_CLASS (lb_visibility_row_parent_class)->dispose (object);
}

static void
lb_visibility_row_class_init (LbVisibilityRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_visibility_row_dispose;
}

static void
lb_visibility_row_init (LbVisibilityRow *self)
{
  self->is_showing = TRUE;
  self->choices = gtk_string_list_new (NULL);
  gtk_string_list_append (self->choices, "");
  for (int i = 0; i < LB_N_VISIBILITIES; i++)
    gtk_string_list_append (self->choices, name_of ((LbVisibility) i));
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), _ ("Planned for"));
  adw_combo_row_set_model (ADW_COMBO_ROW (self), G_LIST_MODEL (self->choices));
  self->is_showing = FALSE;
  g_signal_connect (self, "notify::selected", G_CALLBACK (selected_cb), NULL);
}

LbVisibilityRow *
lb_visibility_row_new (void)
{
  return g_object_new (LB_TYPE_VISIBILITY_ROW, NULL);
}

void
lb_visibility_row_show (LbVisibilityRow *self, LbJob *job)
{
  const LbFold *fold;
  const char *said[2] = { NULL };
  g_autofree char *first = NULL;

  g_return_if_fail (LB_IS_VISIBILITY_ROW (self));

  g_set_object (&self->job, job);
  if (job == NULL)
    return;
  fold = lb_job_get_fold (job);
  first = fold->visibility_shift < 0
            ? g_strdup (_ ("as said last: not yet"))
            /* Translators: a visibility, “as said last: poor visibility”. */
            : g_strdup_printf (_ ("as said last: %s"), name_of (fold->said_visibility));
  self->is_showing = TRUE;
  if (g_strcmp0 (gtk_string_list_get_string (self->choices, AS_SAID), first) != 0) {
    said[0] = first;
    gtk_string_list_splice (self->choices, AS_SAID, 1, said);
  }
  adw_combo_row_set_selected (ADW_COMBO_ROW (self), fold->has_own_visibility
                                                      ? FIRST_CLASS + (guint) fold->own_visibility
                                                      : AS_SAID);
  self->is_showing = FALSE;
  gtk_widget_set_sensitive (GTK_WIDGET (self), !lb_job_is_read_only (job));
}
