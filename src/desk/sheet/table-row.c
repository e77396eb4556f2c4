/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/sheet/table-row.h"

#include "book/delay-causes.h"
#include "desk/sheet/table-window.h"
#include "desk/shell/choose-file.h"
#include "desk/shell/say.h"
#include "draw/voice-text.h"
#include "exchange/setting-list.h"

#include <glib/gi18n-lib.h>

struct _LbTableRow
{
  AdwActionRow parent_instance;

  LbSettingTable table;
  GtkWidget *back_button, *type_button, *open_button;
  LbJob *job;
};

G_DEFINE_FINAL_TYPE (LbTableRow, lb_table_row, ADW_TYPE_ACTION_ROW)

/* What a row of each kind says; msgids. */
static const struct
{
  const char *title, *none, *back, *open_title, *not_taken;
  gboolean is_typed;
} kinds[LB_N_SETTING_TABLES] = {
  [LB_TABLE_DIVE] = { N_ ("No-stop table"), N_ ("U.S. Navy Diving Manual, revision 7, table 9-7"),
                      N_ ("Back to the Navy’s"), N_ ("Open a Table of No-Stop Limits"),
                      N_ ("The table was not taken"), FALSE },
  [LB_TABLE_CRANE] = { N_ ("The crane’s chart"),
                       N_ ("None: the capacity below counts, if it is set"), N_ ("Take Out"),
                       N_ ("Open a Crane’s Chart"), N_ ("The chart was not taken"), TRUE },
  [LB_TABLE_GROUND] = { N_ ("Layers of the ground"),
                        N_ ("Not known: no pull of a whole pile is reckoned"), N_ ("Take Out"),
                        N_ ("Open the Layers of the Ground"), N_ ("The layers were not taken"),
                        TRUE },
  [LB_TABLE_CAUTIONS] = { N_ ("The crew’s own cautions"), N_ ("None beside those built in"),
                          N_ ("Take Out"), N_ ("Open a List of Cautions"),
                          N_ ("The cautions were not taken"), FALSE },
  [LB_TABLE_DELAYS] = { N_ ("Causes of delay"), N_ ("Those built in"), N_ ("Take Out"),
                        N_ ("Open a List of Causes"), N_ ("The causes were not taken"), TRUE },
};

/* @text "" for none. */
static gboolean
record (LbTableRow *self, const char *text, GError **error)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);

  draft.what = lb_setting_table_key (self->table);
  draft.note = text;
  return lb_job_record (self->job, &draft, 1, error);
}

static void
back_clicked_cb (LbTableRow *self)
{
  GError *error = NULL;

  if (!record (self, "", &error))
    lb_say_error (GTK_WIDGET (self), _ ("The table was not taken out"), error);
}

static void
type_clicked_cb (LbTableRow *self)
{
  GtkWindow *parent = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));

  gtk_window_present (GTK_WINDOW (lb_table_window_new (parent, self->job, self->table)));
}

static void
chosen_cb (GFile *file, gpointer data)
{
  lb_table_row_take (LB_TABLE_ROW (data), file);
}

static void
open_clicked_cb (LbTableRow *self)
{
  lb_choose_list (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                  _ (kinds[self->table].open_title), _ ("_Open"), chosen_cb, G_OBJECT (self));
}

static GtkWidget *
add_button (LbTableRow *self, const char *label, GCallback clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  adw_action_row_add_suffix (ADW_ACTION_ROW (self), button);
  return button;
}

static void
lb_table_row_dispose (GObject *object)
{
  g_clear_object (&LB_TABLE_ROW (object)->job);
  G_OBJECT_CLASS (lb_table_row_parent_class)->dispose (object);
}

static void
lb_table_row_class_init (LbTableRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_table_row_dispose;
}

static void
lb_table_row_init (LbTableRow *self)
{
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (self), FALSE);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (self), 0);
}

LbTableRow *
lb_table_row_new (LbSettingTable table)
{
  LbTableRow *self = g_object_new (LB_TYPE_TABLE_ROW, "title", _ (kinds[table].title), NULL);

  self->table = table;
  self->back_button = add_button (self, _ (kinds[table].back), G_CALLBACK (back_clicked_cb));
  self->type_button = add_button (self, _ ("Type…"), G_CALLBACK (type_clicked_cb));
  self->open_button = add_button (self, _ ("Open…"), G_CALLBACK (open_clicked_cb));
  gtk_widget_set_visible (self->type_button, kinds[table].is_typed);
  return self;
}

/* The shallowest and the deepest row tell one table from another. */
static char *
dive_words (const LbDiveTable *table)
{
  const char *unit = table->is_metric ? "msw" : "fsw";

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "The supervisor’s own, %u row, %g to %g %s",
                                       "The supervisor’s own, %u rows, %g to %g %s", table->n_rows),
                          (guint) table->n_rows, table->rows[0].depth,
                          table->rows[table->n_rows - 1].depth, unit);
}

/* So do the shortest and the longest radius. */
static char *
crane_words (const LbVoice *voice, const LbCraneChart *chart)
{
  const LbCraneRow *first = &chart->rows[0], *last = &chart->rows[chart->n_rows - 1];
  g_autofree char *near = lb_voice_quantity (voice, LB_QUANTITY_LENGTH, first->radius_m);
  g_autofree char *far = lb_voice_quantity (voice, LB_QUANTITY_LENGTH, last->radius_m);
  g_autofree char *most = lb_voice_quantity (voice, LB_QUANTITY_FORCE, first->capacity_n);
  g_autofree char *least = lb_voice_quantity (voice, LB_QUANTITY_FORCE, last->capacity_n);

  /* Translators: rows of a crane's chart; capacity and radius of the first and the last. */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u row, %s at %s to %s at %s",
                                       "%u rows, %s at %s to %s at %s", chart->n_rows),
                          chart->n_rows, most, near, least, far);
}

static char *
ground_words (const LbVoice *voice, const LbGround *ground)
{
  g_autofree char *deep = lb_voice_quantity (voice, LB_QUANTITY_LENGTH,
                                             ground->layers[ground->n_layers - 1].to_m);

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u layer to %s below the mudline",
                                       "%u layers to %s below the mudline", ground->n_layers),
                          ground->n_layers, deep);
}

static char *
caution_words (guint n)
{
  return g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%u beside those built in", "%u beside those built in", n), n);
}

static char *
delay_words (const LbFold *fold)
{
  g_auto (GStrv) causes = lb_delay_causes (fold);
  g_autofree char *list = g_strjoinv (", ", causes);

  /* Translators: the job's own list of causes of delay. */
  return g_strdup_printf (_ ("The job’s own: %s"), list);
}

static char *
words_of (LbTableRow *self)
{
  const LbFold *fold = lb_job_get_fold (self->job);
  const LbVoice *voice = lb_job_get_voice (self->job);

  if (*fold->tables[self->table] == '\0')
    return g_strdup (_ (kinds[self->table].none));
  switch (self->table) {
  case LB_TABLE_DIVE:
    return dive_words (&fold->own_table);
  case LB_TABLE_CRANE:
    return crane_words (voice, &fold->chart);
  case LB_TABLE_GROUND:
    return ground_words (voice, &fold->ground);
  case LB_TABLE_CAUTIONS:
    return caution_words ((guint) fold->n_crew_rows);
  case LB_TABLE_DELAYS:
    return delay_words (fold);
  }
  g_assert_not_reached ();
}

void
lb_table_row_show (LbTableRow *self, LbJob *job)
{
  g_autofree char *words = NULL;

  g_return_if_fail (LB_IS_TABLE_ROW (self));

  g_set_object (&self->job, job);
  if (job == NULL)
    return;
  words = words_of (self);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (self), words);
  gtk_widget_set_visible (self->back_button, *lb_job_get_fold (job)->tables[self->table] != '\0');
  gtk_widget_set_sensitive (self->back_button, !lb_job_is_read_only (job));
  gtk_widget_set_sensitive (self->type_button, !lb_job_is_read_only (job));
  gtk_widget_set_sensitive (self->open_button, !lb_job_is_read_only (job));
}

void
lb_table_row_take (LbTableRow *self, GFile *file)
{
  g_autofree char *text = NULL;
  GError *error = NULL;

  g_return_if_fail (LB_IS_TABLE_ROW (self));
  g_return_if_fail (self->job != NULL);

  text = lb_setting_list_load (self->table, file, &error);
  if (text == NULL || !record (self, text, &error))
    lb_say_error (GTK_WIDGET (self), _ (kinds[self->table].not_taken), error);
}
