/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Not an AdwPreferencesWindow: that of libadwaita 1.2 never lets go of the groups in its pages. */
#include "desk/sheet/defaults-window.h"

#include "desk/sheet/assumption-row.h"
#include "desk/sheet/choice-row.h"
#include "desk/sheet/table-row.h"
#include "desk/sheet/visibility-row.h"
#include "desk/shell/focus-later.h"

#include <glib/gi18n-lib.h>

struct _LbDefaultsWindow
{
  AdwWindow parent_instance;

  GtkWidget *rows[LB_N_ASSUMPTIONS]; /* LbAssumptionRow or LbChoiceRow */
  LbTableRow *table_rows[LB_N_SETTING_TABLES];
  LbVisibilityRow *visibility_row;
  LbJob *job;
  GSignalGroup *job_signals;
};

G_DEFINE_FINAL_TYPE (LbDefaultsWindow, lb_defaults_window, ADW_TYPE_WINDOW)

/* Each group goes from its first to the next one's: the table is in their order. */
static const struct
{
  const char *title;
  LbAssumptionId first;
  gboolean has_table; /* over its rows */
  LbSettingTable table;
} groups[] = {
  { N_ ("Water, concrete, growth"), LB_ASSUME_WATER_LEVEL },
  { N_ ("Burning"), LB_ASSUME_CUT_ABOVE_MUDLINE },
  { N_ ("Hold"), LB_ASSUME_YEAR_BUILT },
  { N_ ("Oxygen and leads"), LB_ASSUME_OXYGEN_FLOW },
  { N_ ("Dives"), LB_ASSUME_DIVE_SETUP, TRUE, LB_TABLE_DIVE },
  { N_ ("Lift"), LB_ASSUME_RIGGING_MASS },
  { N_ ("Crane"), LB_ASSUME_CRANE_CAPACITY, TRUE, LB_TABLE_CRANE },
};

static void
update (LbDefaultsWindow *self)
{
  for (int id = 0; id < LB_N_ASSUMPTIONS; id++) {
    if (LB_IS_CHOICE_ROW (self->rows[id]))
      lb_choice_row_show (LB_CHOICE_ROW (self->rows[id]), self->job);
    else
      lb_assumption_row_show (LB_ASSUMPTION_ROW (self->rows[id]), self->job);
  }
  for (int table = 0; table < LB_N_SETTING_TABLES; table++)
    lb_table_row_show (self->table_rows[table], self->job);
  lb_visibility_row_show (self->visibility_row, self->job);
}

static void
add_table (LbDefaultsWindow *self, AdwPreferencesGroup *group, LbSettingTable table)
{
  self->table_rows[table] = lb_table_row_new (table);
  adw_preferences_group_add (group, GTK_WIDGET (self->table_rows[table]));
}

static void
add_assumption (LbDefaultsWindow *self, AdwPreferencesGroup *group, LbAssumptionId id)
{
  if (lb_assumption (id)->choices != NULL) {
    self->rows[id] = GTK_WIDGET (lb_choice_row_new (id));
    adw_preferences_group_add (group, self->rows[id]);
    return;
  }
  self->rows[id] = GTK_WIDGET (lb_assumption_row_new (id));
  adw_preferences_group_add (group, self->rows[id]);
  adw_preferences_group_add (group, lb_checked_row_get_note_row (LB_CHECKED_ROW (self->rows[id])));
}

static AdwPreferencesGroup *
make_group (LbDefaultsWindow *self, gsize i)
{
  const int last = i + 1 < G_N_ELEMENTS (groups) ? (int) groups[i + 1].first : LB_N_ASSUMPTIONS;
  AdwPreferencesGroup *group = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());

  adw_preferences_group_set_title (group, g_dgettext (GETTEXT_PACKAGE, groups[i].title));
  if (groups[i].has_table)
    add_table (self, group, groups[i].table);
  if (groups[i].first == LB_ASSUME_CUT_ABOVE_MUDLINE) {
    self->visibility_row = lb_visibility_row_new ();
    adw_preferences_group_add (group, GTK_WIDGET (self->visibility_row));
  }
  for (int id = (int) groups[i].first; id < last; id++)
    add_assumption (self, group, (LbAssumptionId) id);
  return group;
}

/* One without a number of its own. */
static AdwPreferencesGroup *
make_table_group (LbDefaultsWindow *self, const char *title, LbSettingTable table)
{
  AdwPreferencesGroup *group = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());

  adw_preferences_group_set_title (group, title);
  add_table (self, group, table);
  return group;
}

/* Stands over all rows: who has the last word. */
static AdwPreferencesGroup *
make_warning (void)
{
  AdwPreferencesGroup *group = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());

  adw_preferences_group_set_description (
    group,
    _ ("The cut plans reckon with these numbers. The diving supervisor, the competent rigger, "
       "the licensed engineer and the local code come before every one of them."));
  return group;
}

static void
lb_defaults_window_dispose (GObject *object)
{
  LbDefaultsWindow *self = LB_DEFAULTS_WINDOW (object);

  if (self->job_signals != NULL)
    g_signal_group_set_target (self->job_signals, NULL);
  g_clear_object (&self->job_signals);
  g_clear_object (&self->job);
  G_OBJECT_CLASS (lb_defaults_window_parent_class)->dispose (object);
}

static void
lb_defaults_window_class_init (LbDefaultsWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_defaults_window_dispose;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close",
                                       NULL);
}

static void
lb_defaults_window_init (LbDefaultsWindow *self)
{
  AdwPreferencesPage *page = ADW_PREFERENCES_PAGE (adw_preferences_page_new ());
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_window_set_title (GTK_WINDOW (self), _ ("Rates and Defaults"));
  gtk_window_set_default_size (GTK_WINDOW (self), 560, 640);
  adw_preferences_page_add (page, make_warning ());
  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    adw_preferences_page_add (page, make_group (self, i));
  adw_preferences_page_add (page, make_table_group (self, _ ("Ground"), LB_TABLE_GROUND));
  adw_preferences_page_add (page, make_table_group (self, _ ("Cautions"), LB_TABLE_CAUTIONS));
  adw_preferences_page_add (page, make_table_group (self, _ ("Delays"), LB_TABLE_DELAYS));
  gtk_widget_set_vexpand (GTK_WIDGET (page), TRUE);
  gtk_box_append (GTK_BOX (box), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (page));
  adw_window_set_content (ADW_WINDOW (self), box);

  self->job_signals = g_signal_group_new (LB_TYPE_JOB);
  g_signal_group_connect_swapped (self->job_signals, "changed", G_CALLBACK (update), self);
}

LbDefaultsWindow *
lb_defaults_window_new (GtkWindow *parent, LbJob *job)
{
  LbDefaultsWindow *self = g_object_new (LB_TYPE_DEFAULTS_WINDOW, "transient-for", parent, "modal",
                                         TRUE, NULL);

  self->job = g_object_ref (job);
  g_signal_group_set_target (self->job_signals, job);
  update (self);
  return self;
}

static GtkWidget *
row_of (LbDefaultsWindow *self, const LbInput *input)
{
  switch (input->kind) {
  case LB_INPUT_ASSUMPTION:
    return self->rows[input->id];
  case LB_INPUT_VISIBILITY:
    return GTK_WIDGET (self->visibility_row);
  case LB_INPUT_DIVE_TABLE:
    return GTK_WIDGET (self->table_rows[LB_TABLE_DIVE]);
  case LB_INPUT_CRANE_CHART:
    return GTK_WIDGET (self->table_rows[LB_TABLE_CRANE]);
  case LB_INPUT_GROUND:
    return GTK_WIDGET (self->table_rows[LB_TABLE_GROUND]);
  case LB_INPUT_FACT:
  case LB_INPUT_BURNED:
  case LB_INPUT_FIGURE:
  case LB_INPUT_LESSON:
  default:
    g_return_val_if_reached (NULL);
  }
}

void
lb_defaults_window_ask (LbDefaultsWindow *self, const LbInput *input)
{
  g_return_if_fail (LB_IS_DEFAULTS_WINDOW (self));

  lb_focus_later (row_of (self, input));
}
