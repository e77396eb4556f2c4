/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet-fixture.h"

#include "desk/sheet/checked-row.h"
#include "desk/sheet/pile-sheet.h"
#include "desk/sheet/section-view.h"
#include "small-job.h"

#include <adwaita.h>
#include <string.h>

/* Only where somebody could see it: not on a page of a stack that is turned over. */
GtkWidget *
sheet_find (GtkWidget *parent, SheetMatches matches, const void *wanted)
{
  if (matches (parent, wanted))
    return parent;
  for (GtkWidget *child = gtk_widget_get_first_child (parent); child != NULL;
       child = gtk_widget_get_next_sibling (child))
  {
    GtkWidget *found = gtk_widget_get_child_visible (child) ? sheet_find (child, matches, wanted)
                                                            : NULL;

    if (found != NULL)
      return found;
  }
  return NULL;
}

static gboolean
is_of_type (GtkWidget *widget, const void *wanted)
{
  return G_TYPE_CHECK_INSTANCE_TYPE (widget, *(const GType *) wanted);
}

gboolean
sheet_reads (GtkWidget *widget, const void *wanted)
{
  return GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), wanted) != NULL;
}

gboolean
sheet_is_button (GtkWidget *widget, const void *wanted)
{
  return GTK_IS_BUTTON (widget) && sheet_find (widget, sheet_reads, wanted) != NULL;
}

gboolean
sheet_is_row (GtkWidget *widget, const void *wanted)
{
  return LB_IS_CHECKED_ROW (widget) &&
         g_str_has_prefix (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (widget)), wanted);
}

gboolean
sheet_has_icon (GtkWidget *widget, const void *wanted)
{
  return GTK_IS_BUTTON (widget) &&
         g_strcmp0 (gtk_button_get_icon_name (GTK_BUTTON (widget)), wanted) == 0;
}

GtkWidget *
sheet_find_type (GtkWidget *parent, GType type)
{
  GtkWidget *found = sheet_find (parent, is_of_type, &type);

  g_assert_nonnull (found);
  return found;
}

void
sheet_assert_reads (GtkWidget *parent, const char *text)
{
  if (sheet_find (parent, sheet_reads, text) == NULL)
    g_error ("nothing reads “%s”", text);
}

void
sheet_click_button (GtkWidget *parent, const char *label)
{
  GtkWidget *button = sheet_find (parent, sheet_is_button, label);

  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
}

const LbPileState *
sheet_state_of (SheetFixture *fixture, guint pile)
{
  return &lb_job_get_fold (fixture->job)->states[pile];
}

const LbPile *
sheet_facts_of (SheetFixture *fixture, guint pile)
{
  return &lb_job_get_fold (fixture->job)->piles[pile];
}

void
sheet_set_up (SheetFixture *fixture, gconstpointer data)
{
  fixture->path = small_job_create ();
  fixture->job = small_job_open (fixture->path);
  fixture->selection = lb_selection_new ();
  fixture->sheet = g_object_new (LB_TYPE_PILE_SHEET, NULL);
  g_object_set (fixture->sheet, "selection", fixture->selection, "job", fixture->job, NULL);
  fixture->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 400, 700);
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->sheet);
  lb_selection_set_current (fixture->selection, SHEET_PILE);
  gtk_window_present (GTK_WINDOW (fixture->window));
  gtk_test_widget_wait_for_draw (fixture->window);
  fixture->section = sheet_find_type (fixture->sheet, LB_TYPE_SECTION_VIEW);
}

void
sheet_tear_down (SheetFixture *fixture, gconstpointer data)
{
  g_object_add_weak_pointer (G_OBJECT (fixture->sheet), (gpointer *) &fixture->sheet);
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  while (fixture->sheet != NULL && g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_null (fixture->sheet);
  g_assert_finalize_object (fixture->selection);
  g_assert_finalize_object (fixture->job);
  small_job_remove (fixture->path);
}

GtkGesture *
sheet_section_click (SheetFixture *fixture)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (fixture->section);

  for (guint i = 0; i < g_list_model_get_n_items (all); i++) {
    g_autoptr (GtkEventController) one = g_list_model_get_item (all, i);

    if (GTK_IS_GESTURE_CLICK (one) &&
        gtk_gesture_single_get_button (GTK_GESTURE_SINGLE (one)) == GDK_BUTTON_PRIMARY)
      return GTK_GESTURE (one);
  }
  g_assert_not_reached ();
}

void
sheet_touch_bar (SheetFixture *fixture, guint bar)
{
  double x, y;

  lb_section_view_bar_place (LB_SECTION_VIEW (fixture->section), bar, &x, &y);
  g_signal_emit_by_name (sheet_section_click (fixture), "pressed", 1, x, y);
  g_signal_emit_by_name (sheet_section_click (fixture), "released", 1, x, y);
}

gboolean
sheet_press_key (GtkWidget *widget, guint keyval)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (all); i++) {
    g_autoptr (GtkEventController) one = g_list_model_get_item (all, i);

    if (!GTK_IS_SHORTCUT_CONTROLLER (one))
      continue;
    for (guint k = 0; k < g_list_model_get_n_items (G_LIST_MODEL (one)); k++) {
      g_autoptr (GtkShortcut) shortcut = g_list_model_get_item (G_LIST_MODEL (one), k);
      GtkShortcutTrigger *trigger = gtk_shortcut_get_trigger (shortcut);

      if (GTK_IS_KEYVAL_TRIGGER (trigger) &&
          gtk_keyval_trigger_get_keyval (GTK_KEYVAL_TRIGGER (trigger)) == keyval)
        return gtk_shortcut_action_activate (gtk_shortcut_get_action (shortcut), 0, widget,
                                             gtk_shortcut_get_arguments (shortcut));
    }
  }
  return FALSE;
}
