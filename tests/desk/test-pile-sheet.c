/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pile sheet under the hand: bars touched, walked and counted, steps, facts refused and taken,
 * history, defaults; asked by what the job says afterwards and what can be read on the sheet. */
#include "desk/sheet/assumption-row.h"
#include "desk/sheet/bars-popover.h"
#include "desk/sheet/caution-list.h"
#include "desk/sheet/defaults-window.h"
#include "desk/sheet/fact-group.h"
#include "desk/sheet/figure-list.h"
#include "desk/sheet/history-entry.h"
#include "desk/sheet/history-list.h"
#include "desk/sheet/pile-event.h"
#include "desk/sheet/pile-sheet.h"
#include "desk/sheet/section-view.h"
#include "desk/sheet/sheet-pile.h"
#include "draw/plan-words.h"
#include "small-job.h"

#include <adwaita.h>
#include <string.h>

#define PILE 4u

typedef struct
{
  char *path;
  LbJob *job;
  LbSelection *selection;
  GtkWidget *window;
  GtkWidget *sheet;
  GtkWidget *section;
} Fixture;

typedef gboolean (*Matches) (GtkWidget *widget, const void *wanted);

/* Only where somebody could see it: not on a page of a stack that is turned over. */
static GtkWidget *
find (GtkWidget *parent, Matches matches, const void *wanted)
{
  if (matches (parent, wanted))
    return parent;
  for (GtkWidget *child = gtk_widget_get_first_child (parent); child != NULL;
       child = gtk_widget_get_next_sibling (child))
  {
    GtkWidget *found = gtk_widget_get_child_visible (child) ? find (child, matches, wanted) : NULL;

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

static gboolean
reads (GtkWidget *widget, const void *wanted)
{
  return GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), wanted) != NULL;
}

static gboolean
is_button (GtkWidget *widget, const void *wanted)
{
  return GTK_IS_BUTTON (widget) && find (widget, reads, wanted) != NULL;
}

static gboolean
is_row (GtkWidget *widget, const void *wanted)
{
  return LB_IS_CHECKED_ROW (widget) &&
         g_str_has_prefix (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (widget)), wanted);
}

static gboolean
has_icon (GtkWidget *widget, const void *wanted)
{
  return GTK_IS_BUTTON (widget) &&
         g_strcmp0 (gtk_button_get_icon_name (GTK_BUTTON (widget)), wanted) == 0;
}

static GtkWidget *
find_type (GtkWidget *parent, GType type)
{
  GtkWidget *found = find (parent, is_of_type, &type);

  g_assert_nonnull (found);
  return found;
}

static void
assert_reads (GtkWidget *parent, const char *text)
{
  if (find (parent, reads, text) == NULL)
    g_error ("nothing reads “%s”", text);
}

static void
click_button (GtkWidget *parent, const char *label)
{
  GtkWidget *button = find (parent, is_button, label);

  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
}

static const LbPileState *
state_of (Fixture *fixture, guint pile)
{
  return &lb_job_get_fold (fixture->job)->states[pile];
}

static const LbPile *
facts_of (Fixture *fixture, guint pile)
{
  return &lb_job_get_fold (fixture->job)->piles[pile];
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->path = small_job_create ();
  fixture->job = small_job_open (fixture->path);
  fixture->selection = lb_selection_new ();
  fixture->sheet = g_object_new (LB_TYPE_PILE_SHEET, NULL);
  g_object_set (fixture->sheet, "selection", fixture->selection, "job", fixture->job, NULL);
  fixture->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 400, 700);
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->sheet);
  lb_selection_set_current (fixture->selection, PILE);
  gtk_window_present (GTK_WINDOW (fixture->window));
  gtk_test_widget_wait_for_draw (fixture->window);
  fixture->section = find_type (fixture->sheet, LB_TYPE_SECTION_VIEW);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
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

static GtkGesture *
section_click (Fixture *fixture)
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

static void
touch_bar (Fixture *fixture, guint bar)
{
  double x, y;

  lb_section_view_bar_place (LB_SECTION_VIEW (fixture->section), bar, &x, &y);
  g_signal_emit_by_name (section_click (fixture), "pressed", 1, x, y);
  g_signal_emit_by_name (section_click (fixture), "released", 1, x, y);
}

static gboolean
press_key (GtkWidget *widget, guint keyval)
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

static void
test_touch (Fixture *fixture, gconstpointer data)
{
  assert_reads (fixture->sheet, "standing");
  touch_bar (fixture, 2);
  g_assert_cmphex (state_of (fixture, PILE)->burned, ==, LB_BAR (2));
  assert_reads (fixture->sheet, "7 of 8 bars left");
  assert_reads (find_type (fixture->sheet, LB_TYPE_HISTORY_LIST), "Bar 3 burned");

  /* A touch never unburns. */
  touch_bar (fixture, 2);
  g_assert_cmphex (state_of (fixture, PILE)->burned, ==, LB_BAR (2));
}

/* A finger that moves on scrolls the sheet; one that rests beside a bar means the nearest. */
static void
test_touch_that_moves (Fixture *fixture, gconstpointer data)
{
  double x, y;

  lb_section_view_bar_place (LB_SECTION_VIEW (fixture->section), 0, &x, &y);
  g_signal_emit_by_name (section_click (fixture), "pressed", 1, x, y);
  g_signal_emit_by_name (section_click (fixture), "released", 1, x, y + 60);
  g_signal_emit_by_name (section_click (fixture), "released", 1, x, y);
  g_assert_cmphex (state_of (fixture, PILE)->burned, ==, 0);

  g_signal_emit_by_name (section_click (fixture), "pressed", 1, x, y - 20);
  g_signal_emit_by_name (section_click (fixture), "released", 1, x, y - 20);
  g_assert_cmphex (state_of (fixture, PILE)->burned, ==, LB_BAR (0));
}

static void
test_keys (Fixture *fixture, gconstpointer data)
{
  LbSheetPile shown;
  guint8 order[2];

  lb_sheet_pile_load (&shown, fixture->job, PILE);
  memcpy (order, shown.plan.order, sizeof order);
  gtk_test_accessible_assert_role (fixture->section, GTK_ACCESSIBLE_ROLE_IMG);
  /* The focus begins at the first to burn. */
  gtk_widget_grab_focus (fixture->section);
  g_assert_true (press_key (fixture->section, GDK_KEY_Right));
  g_assert_true (press_key (fixture->section, GDK_KEY_space));
  g_assert_cmphex (state_of (fixture, PILE)->burned, ==, LB_BAR (order[1]));

  /* On from a burned bar is the next in the order, which is another one now that the burner left
   * it. */
  lb_sheet_pile_load (&shown, fixture->job, PILE);
  g_assert_true (press_key (fixture->section, GDK_KEY_Right));
  g_assert_true (press_key (fixture->section, GDK_KEY_Return));
  g_assert_cmphex (state_of (fixture, PILE)->burned, ==,
                   LB_BAR (order[1]) | LB_BAR (shown.plan.order[0]));
}

static void
record_count (Fixture *fixture, int count, gboolean is_next)
{
  GtkWidget *popover = find_type (fixture->sheet, LB_TYPE_BARS_POPOVER);
  GtkWidget *spin = find_type (popover, GTK_TYPE_SPIN_BUTTON);
  GtkWidget *check = find_type (popover, GTK_TYPE_CHECK_BUTTON);

  gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), count);
  if (is_next)
    check = gtk_widget_get_next_sibling (check);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  click_button (popover, "Record");
}

/* Found gone from the keyboard: the menu key on a bar asks, and one press records it. */
static void
test_found_gone (Fixture *fixture, gconstpointer data)
{
  const guint n_before = lb_job_get_fold (fixture->job)->job.bars;
  GtkWidget *popover = find_type (fixture->sheet, LB_TYPE_BARS_POPOVER);
  GtkWidget *entry = find_type (popover, GTK_TYPE_ENTRY);
  LbSheetPile shown;

  lb_sheet_pile_load (&shown, fixture->job, PILE);
  gtk_widget_grab_focus (fixture->section);

  const guint bar = shown.plan.order[0];
  g_autofree char *number = g_strdup_printf ("%u", bar + 1);

  g_assert_true (press_key (fixture->section, GDK_KEY_Menu));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, number);
  click_button (popover, "Found Gone");
  g_assert_cmphex (state_of (fixture, PILE)->gone, ==, LB_BAR (bar));
  g_assert_cmpuint (lb_job_get_fold (fixture->job)->job.bars, ==, n_before);

  /* What is no bar of the pile is said, and cannot be recorded. */
  gtk_editable_set_text (GTK_EDITABLE (entry), "61");
  g_assert_false (gtk_widget_get_sensitive (find (popover, is_button, "Found Gone")));
  gtk_editable_set_text (GTK_EDITABLE (entry), "60");
  assert_reads (popover, "The pile has bars 1 to 8");
}

static gsize
step_of (Fixture *fixture)
{
  return lb_section_view_get_step (LB_SECTION_VIEW (fixture->section));
}

/* Looking ahead in the order records nothing, by key or by button, and no touch does while one looks
 * ahead. */
static void
test_looking_ahead (Fixture *fixture, gconstpointer data)
{
  const gsize n_entries = lb_job_get_fold (fixture->job)->n_entries;
  GtkWidget *back = find (fixture->sheet, has_icon, "media-seek-backward-symbolic");
  GtkWidget *on = find (fixture->sheet, has_icon, "media-seek-forward-symbolic");

  assert_reads (fixture->sheet, "As it stands. Bar");
  g_assert_false (gtk_widget_get_sensitive (back));
  gtk_widget_grab_focus (fixture->section);
  g_assert_true (press_key (fixture->section, GDK_KEY_Page_Down));
  g_assert_true (press_key (fixture->section, GDK_KEY_period));
  g_assert_cmpuint (step_of (fixture), ==, 2);
  assert_reads (fixture->sheet, "2 of 8 bars burned.");
  g_assert_true (gtk_widget_get_sensitive (back));
  touch_bar (fixture, 0);
  g_assert_true (press_key (fixture->section, GDK_KEY_space));
  g_assert_true (press_key (fixture->section, GDK_KEY_comma));
  g_signal_emit_by_name (back, "clicked");
  g_assert_true (press_key (fixture->section, GDK_KEY_Page_Up));
  g_assert_cmpuint (step_of (fixture), ==, 0);

  for (int i = 0; i < 8; i++)
    g_signal_emit_by_name (on, "clicked");
  g_assert_cmpuint (step_of (fixture), ==, 8);
  g_assert_false (gtk_widget_get_sensitive (on));
  assert_reads (fixture->sheet, "Nothing but the hook holds the piece.");
  g_assert_true (press_key (fixture->section, GDK_KEY_Page_Down));
  g_assert_cmpuint (step_of (fixture), ==, 8);
  g_assert_true (press_key (fixture->section, GDK_KEY_Home));
  g_assert_cmpuint (step_of (fixture), ==, 0);
  g_assert_cmpuint (lb_job_get_fold (fixture->job)->n_entries, ==, n_entries);

  /* What is recorded is another order, of which no step was taken. */
  g_assert_true (press_key (fixture->section, GDK_KEY_Page_Down));
  click_button (fixture->sheet, "Burned: Next Bar");
  g_assert_cmpuint (step_of (fixture), ==, 0);
  touch_bar (fixture, 6);
  g_assert_true (state_of (fixture, PILE)->burned & LB_BAR (6));
}

/* A screen reader hears the step, and the hook before its bar. */
static void
test_steps_are_said (Fixture *fixture, gconstpointer data)
{
  LbSheetPile shown;
  g_autofree char *hold = NULL;
  g_autofree char *step = NULL;
  g_autofree char *label = NULL;
  LbBarShares shares;
  gsize at;

  lb_sheet_pile_load (&shown, fixture->job, PILE);
  g_assert_cmpuint (shown.plan.hold.rig_before, >, 1);
  at = shown.plan.hold.rig_before - 1;
  lb_section_view_set_step (LB_SECTION_VIEW (fixture->section), at);
  hold = lb_hold_point_text (&shown.plan, at);
  g_assert_nonnull (hold);
  assert_reads (fixture->sheet, hold);
  g_assert_true (lb_pile_hold_shares (shown.pile, shown.plan.places, 0, lb_fold_basis (shown.fold),
                                      &shown.plan.hold, at, &shares));
  step = lb_step_text (shown.voice, &shown.fold->assumptions, &shown.plan, &shares, at);
  label = g_strdup_printf ("The bars at the cut, looking down. %s. %s", hold, step);
  gtk_test_accessible_assert_property (fixture->section, GTK_ACCESSIBLE_PROPERTY_LABEL, label);
}

static gboolean
set_flag_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

/* Play runs to where the hook must hold, and no farther. */
static void
test_play_stops_at_the_hold (Fixture *fixture, gconstpointer data)
{
  GtkWidget *play = find (fixture->sheet, has_icon, "media-playback-start-symbolic");
  gboolean is_over = FALSE;
  LbSheetPile shown;

  lb_sheet_pile_load (&shown, fixture->job, PILE);
  g_assert_nonnull (play);
  g_signal_emit_by_name (play, "clicked");
  g_assert_null (find (fixture->sheet, has_icon, "media-playback-start-symbolic"));
  while (find (fixture->sheet, has_icon, "media-playback-pause-symbolic") != NULL)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (step_of (fixture), ==, shown.plan.hold.rig_before - 1);
  g_timeout_add (2000, set_flag_cb, &is_over);
  small_job_wait (&is_over);
  g_assert_cmpuint (step_of (fixture), ==, shown.plan.hold.rig_before - 1);

  /* Asked again it goes on; and it stops when it is stopped. */
  g_signal_emit_by_name (play, "clicked");
  while (step_of (fixture) < shown.plan.hold.rig_before)
    g_main_context_iteration (NULL, TRUE);
  if (find (fixture->sheet, has_icon, "media-playback-pause-symbolic") != NULL)
    g_signal_emit_by_name (play, "clicked");
  g_assert_nonnull (find (fixture->sheet, has_icon, "media-playback-start-symbolic"));
}

/* Bars of which only the count is known have no steps, and the sheet says why. */
static void
test_no_steps (Fixture *fixture, gconstpointer data)
{
  GtkWidget *on = find (fixture->sheet, has_icon, "media-seek-forward-symbolic");

  g_assert_true (gtk_widget_get_mapped (on));
  record_count (fixture, 2, FALSE);
  g_assert_false (gtk_widget_get_mapped (on));
  assert_reads (fixture->sheet, "No steps to show: Which bars are burned is not on record");
  g_assert_false (press_key (fixture->section, GDK_KEY_Page_Down));
}

static void
test_last_bar_severs (Fixture *fixture, gconstpointer data)
{
  for (int i = 0; i < 8; i++)
    click_button (fixture->sheet, "Burned: Next Bar");
  g_assert_cmpuint (state_of (fixture, PILE)->n_left, ==, 0);
  g_assert_cmpint (state_of (fixture, PILE)->step, ==, LB_STEP_SEVERED);
  g_assert_false (gtk_widget_get_sensitive (find (fixture->sheet, is_button, "Burned: Next Bar")));
}

static void
test_count (Fixture *fixture, gconstpointer data)
{
  LbSheetPile shown;
  LbBarSet next;

  lb_sheet_pile_load (&shown, fixture->job, PILE);
  next = LB_BAR (shown.plan.order[0]) | LB_BAR (shown.plan.order[1]);
  record_count (fixture, 2, TRUE);
  g_assert_cmphex (state_of (fixture, PILE)->burned, ==, next);
  record_count (fixture, 3, FALSE);
  g_assert_cmphex (state_of (fixture, PILE)->burned, ==, next);
  g_assert_cmpuint (state_of (fixture, PILE)->n_unplaced, ==, 3);
  g_assert_cmpuint (state_of (fixture, PILE)->n_left, ==, 3);

  /* As many as are left, and no more, can be said; with the last it is severed. */
  record_count (fixture, 50, FALSE);
  g_assert_cmpuint (state_of (fixture, PILE)->n_left, ==, 0);
  g_assert_cmpuint (state_of (fixture, PILE)->flags, ==, 0);
  g_assert_cmpint (state_of (fixture, PILE)->step, ==, LB_STEP_SEVERED);
}

static void
answer_all (Fixture *fixture, const char *reason)
{
  g_autoptr (GArray) findings = lb_findings_new (lb_job_get_ledger (fixture->job),
                                                 lb_job_get_fold (fixture->job));

  g_assert_cmpuint (findings->len, ==, 1);
  g_assert_true (
    lb_job_answer (fixture->job, &g_array_index (findings, LbFinding, 0), reason, NULL));
}

static void
test_steps (Fixture *fixture, gconstpointer data)
{
  click_button (fixture->sheet, "Cleaned");
  g_assert_cmpint (state_of (fixture, PILE)->step, ==, LB_STEP_CLEANED);
  assert_reads (fixture->sheet, "cleaned");
  click_button (fixture->sheet, "Pulled");
  /* Pulled, with its bars never burned: the sheet says what to do, and then what was said to it. */
  assert_reads (fixture->sheet, "record how it came out");
  answer_all (fixture, "it broke in the sling");
  assert_reads (fixture->sheet, "Answered: it broke in the sling");
}

/* A screen reader says a step once: it has a name, and no second one from its label. */
static void
test_steps_are_named_once (Fixture *fixture, gconstpointer data)
{
  static const char *const steps[] = { "Cleaned", "Severed", "Rigged", "Pulled" };

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++) {
    GtkWidget *button = find (fixture->sheet, is_button, steps[i]);

    g_assert_nonnull (button);
    gtk_test_accessible_assert_property (button, GTK_ACCESSIBLE_PROPERTY_LABEL, steps[i]);
    g_assert_false (gtk_test_accessible_has_relation (GTK_ACCESSIBLE (button),
                                                      GTK_ACCESSIBLE_RELATION_LABELLED_BY));
  }
}

/* In a window of 1024 by 640 px the sheet has about 588 px, and steps are recorded without
 * scrolling, also for a pile that has something wrong with it. */
static void
test_steps_are_in_sight (Fixture *fixture, gconstpointer data)
{
  GtkWidget *scroller = find_type (fixture->sheet, GTK_TYPE_SCROLLED_WINDOW);

  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 372, 588);
  g_assert_true (lb_job_mark_step (fixture->job, (const guint[]){ PILE }, 1, LB_STEP_PULLED, NULL));
  assert_reads (fixture->sheet, "record how it came out");
  for (int i = 0; i < 2; i++) {
    GtkWidget *button = find (fixture->sheet, is_button, "Pulled");
    graphene_rect_t bounds;

    gtk_test_widget_wait_for_draw (fixture->window);
    g_assert_true (gtk_widget_compute_bounds (button, scroller, &bounds));
    g_assert_cmpfloat (bounds.size.height, >=, 44);
    g_assert_cmpfloat (bounds.origin.y + bounds.size.height, <=, gtk_widget_get_height (scroller));
    /* And the same for a pile with nothing wrong. */
    lb_selection_set_current (fixture->selection, 7);
  }
}

static int
natural_width (GtkWidget *widget)
{
  int natural;

  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &natural, NULL, NULL);
  return natural;
}

/* The plan beside the sheet stays where it is, whatever there is to say of a pile. */
static void
test_width_stays (Fixture *fixture, gconstpointer data)
{
  const guint two[] = { 0, 1 };
  const int width = natural_width (fixture->sheet);

  g_assert_true (lb_job_mark_step (fixture->job, (const guint[]){ 7 }, 1, LB_STEP_PULLED, NULL));
  g_assert_true (lb_job_mark_step (fixture->job, (const guint[]){ 8 }, 1, LB_STEP_SEVERED, NULL));
  g_assert_true (lb_job_mark_step (fixture->job, (const guint[]){ 8 }, 1, LB_STEP_RIGGED, NULL));
  for (guint pile = 0; pile < lb_job_get_fold (fixture->job)->n_piles; pile++) {
    lb_selection_set_current (fixture->selection, (int) pile);
    g_assert_cmpint (natural_width (fixture->sheet), ==, width);
  }
  lb_selection_set_piles (fixture->selection, two, G_N_ELEMENTS (two));
  g_assert_cmpint (natural_width (fixture->sheet), ==, width);
  lb_selection_set_current (fixture->selection, -1);
  g_assert_cmpint (natural_width (fixture->sheet), ==, width);
}

static void
test_several (Fixture *fixture, gconstpointer data)
{
  const guint piles[] = { 0, 1, 5 };

  lb_selection_set_piles (fixture->selection, piles, G_N_ELEMENTS (piles));
  assert_reads (fixture->sheet, "3 piles picked");
  assert_reads (fixture->sheet, "24 bars left\n3 standing");
  lb_job_mark_step (fixture->job, piles, 2, LB_STEP_SEVERED, NULL);
  assert_reads (fixture->sheet, "8 bars left\n1 standing\n2 severed");
  lb_selection_set_current (fixture->selection, -1);
  g_assert_false (gtk_widget_get_visible (find_type (fixture->sheet, GTK_TYPE_STACK)));
}

/* Enter records what was typed once, and closes the question. */
static void
test_note_by_enter (Fixture *fixture, gconstpointer data)
{
  const guint n_before = lb_job_get_ledger (fixture->job)->entries->len;
  GtkWidget *dialog = NULL;

  lb_pile_event_note (fixture->sheet, fixture->job, PILE);
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *at = windows; at != NULL; at = at->next) {
    if (ADW_IS_MESSAGE_DIALOG (at->data))
      dialog = at->data;
  }
  g_assert_nonnull (dialog);
  g_object_add_weak_pointer (G_OBJECT (dialog), (gpointer *) &dialog);

  GtkWidget *row = find_type (dialog, ADW_TYPE_ENTRY_ROW);

  gtk_editable_set_text (GTK_EDITABLE (row), "spalled");
  g_signal_emit_by_name (row, "entry-activated");
  g_assert_null (dialog);
  g_assert_cmpuint (lb_job_get_ledger (fixture->job)->entries->len, ==, n_before + 1);
}

static GtkWidget *
fact_row (Fixture *fixture, const char *title)
{
  GtkWidget *group = find_type (fixture->sheet, LB_TYPE_FACT_GROUP);
  GtkWidget *row;

  adw_expander_row_set_expanded (ADW_EXPANDER_ROW (group), TRUE);
  row = find (group, is_row, title);
  g_assert_nonnull (row);
  return row;
}

static void
test_fact_refused (Fixture *fixture, gconstpointer data)
{
  GtkWidget *row = fact_row (fixture, "Width");
  const double before = facts_of (fixture, PILE)->outline.width_m;

  gtk_editable_set_text (GTK_EDITABLE (row), "fat");
  g_assert_true (gtk_widget_has_css_class (row, "error"));
  assert_reads (lb_checked_row_get_note_row (LB_CHECKED_ROW (row)), "fat");
  g_assert_false (lb_checked_row_commit (LB_CHECKED_ROW (row)));
  g_assert_cmpfloat (facts_of (fixture, PILE)->outline.width_m, ==, before);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (row)), ==, "fat");

  g_assert_true (press_key (row, GDK_KEY_Escape));
  g_assert_false (gtk_widget_has_css_class (row, "error"));

  row = fact_row (fixture, "Mark");
  gtk_editable_set_text (GTK_EDITABLE (row), facts_of (fixture, 0)->mark);
  g_assert_true (gtk_widget_has_css_class (row, "error"));
  g_assert_false (lb_checked_row_commit (LB_CHECKED_ROW (row)));
}

static void
test_fact_stored (Fixture *fixture, gconstpointer data)
{
  GtkWidget *row = fact_row (fixture, "Width");

  gtk_editable_set_text (GTK_EDITABLE (row), "508 mm");
  g_assert_false (gtk_widget_has_css_class (row, "error"));
  g_signal_emit_by_name (row, "entry-activated");
  g_assert_cmpfloat_with_epsilon (facts_of (fixture, PILE)->outline.width_m, 0.508, 1e-9);
  /* Shown in the job's unit, as it is stored. */
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (row)), ==, "20");
  assert_reads (fixture->sheet, "20 in octagonal");

  /* What disagrees with the rest is said, and stored: the other fact may be the wrong one. */
  row = fact_row (fixture, "Head elevation");
  gtk_editable_set_text (GTK_EDITABLE (row), "-100");
  g_assert_true (gtk_widget_has_css_class (row, "warning"));
  g_assert_true (lb_checked_row_commit (LB_CHECKED_ROW (row)));
  g_assert_cmpfloat_with_epsilon (facts_of (fixture, PILE)->head_m, -30.48, 1e-9);

  /* Kept in metres, read in feet. */
  gtk_editable_set_text (GTK_EDITABLE (row), "4.9");
  g_assert_true (lb_checked_row_commit (LB_CHECKED_ROW (row)));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (row)), ==, "4.9");
}

/* What is being typed survives what is recorded meanwhile, and is stored for its own pile when
 * another is looked at. */
static void
test_fact_half_typed (Fixture *fixture, gconstpointer data)
{
  GtkWidget *row = fact_row (fixture, "Note");

  gtk_editable_set_text (GTK_EDITABLE (row), "spalled");
  click_button (fixture->sheet, "Cleaned");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (row)), ==, "spalled");
  g_assert_cmpstr (facts_of (fixture, PILE)->note, ==, "");

  lb_selection_set_current (fixture->selection, 7);
  g_assert_cmpstr (facts_of (fixture, PILE)->note, ==, "spalled");
  g_assert_cmpstr (facts_of (fixture, 7)->note, ==, "");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (row)), ==, "");
}

static void
test_fact_chosen (Fixture *fixture, gconstpointer data)
{
  GtkWidget *group = find_type (fixture->sheet, LB_TYPE_FACT_GROUP);
  GtkWidget *shape;

  fact_row (fixture, "Mark");
  shape = find_type (group, GTK_TYPE_DROP_DOWN);
  /* The first of the list is "not known". */
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (shape)), ==, LB_SHAPE_OCTAGON + 1);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (shape), 0);
  g_assert_false (lb_pile_says (facts_of (fixture, PILE), LB_FACT_SHAPE));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (shape), LB_SHAPE_ROUND + 1);
  g_assert_true (lb_pile_says (facts_of (fixture, PILE), LB_FACT_SHAPE));
  g_assert_cmpint (facts_of (fixture, PILE)->outline.shape, ==, LB_SHAPE_ROUND);
  /* Looking at another pile records nothing. */
  lb_selection_set_current (fixture->selection, 7);
  g_assert_cmpint (facts_of (fixture, 7)->outline.shape, ==, LB_SHAPE_OCTAGON);
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (shape)), ==, LB_SHAPE_OCTAGON + 1);
}

static void
test_history (Fixture *fixture, gconstpointer data)
{
  GtkWidget *history = find_type (fixture->sheet, LB_TYPE_HISTORY_LIST);
  GListModel *model = lb_history_list_get_model (LB_HISTORY_LIST (history));
  g_autoptr (LbHistoryEntry) newest = NULL;

  assert_reads (history, "Nothing was recorded yet");
  touch_bar (fixture, 0);
  touch_bar (fixture, 3);
  g_assert_cmpuint (g_list_model_get_n_items (model), ==, 2);
  g_assert_true (lb_job_take_back (fixture->job, NULL));
  g_assert_cmpuint (g_list_model_get_n_items (model), ==, 2);
  newest = g_list_model_get_item (model, 0);
  g_assert_cmpstr (lb_history_entry_get_text (newest), ==, "Bar 4 burned");
  g_assert_false (lb_history_entry_get_is_alive (newest));
  assert_reads (history, "taken back · ");
  g_assert_cmphex (state_of (fixture, PILE)->burned, ==, LB_BAR (0));
  /* Two buttons that look alike are told apart by their names. */
  gtk_test_accessible_assert_property (find (history, has_icon, "edit-undo-symbolic"),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Take back: Bar 1 burned");

  lb_selection_set_current (fixture->selection, 7);
  g_assert_cmpuint (g_list_model_get_n_items (model), ==, 0);
}

static void
test_figures (Fixture *fixture, gconstpointer data)
{
  GtkWidget *figures = find_type (fixture->sheet, LB_TYPE_FIGURE_LIST);
  GtkWidget *reason = find (figures, reads, "bars on record");

  assert_reads (figures, "Hook load");
  assert_reads (find_type (fixture->sheet, LB_TYPE_CAUTION_LIST), "Caution");
  assert_reads (find_type (fixture->sheet, LB_TYPE_CAUTION_LIST), "At every cut");
  g_assert_nonnull (reason);
  /* The same row says it when something is recorded. */
  touch_bar (fixture, 0);
  g_assert_true (find (figures, reads, "bars on record") == reason);
}

static void
assert_whole (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget))
    g_assert_false (pango_layout_is_ellipsized (gtk_label_get_layout (GTK_LABEL (widget))));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    assert_whole (child);
}

/* However long: a figure is checked by its reason. */
static void
test_reasons_are_whole (Fixture *fixture, gconstpointer data)
{
  GtkWidget *figures = find_type (fixture->sheet, LB_TYPE_FIGURE_LIST);
  GtkWidget *reason = find (figures, reads, "bars on record");
  const int height = gtk_widget_get_height (reason);

  gtk_label_set_label (GTK_LABEL (reason),
                       "de 8 barras que constan en el registro, contadas por el buzo al pie de la "
                       "obra, con las que se dieron por quemadas sin que se dijera cuáles");
  gtk_test_widget_wait_for_draw (fixture->window);
  g_assert_cmpint (gtk_widget_get_height (reason), >, 2 * height);
  assert_whole (figures);
}

static void
test_defaults (Fixture *fixture, gconstpointer data)
{
  LbDefaultsWindow *window = lb_defaults_window_new (GTK_WINDOW (fixture->window), fixture->job);
  GtkWidget *row = find (GTK_WIDGET (window), is_row, "Water level");
  const LbAssumptions *now;

  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  g_assert_nonnull (row);
  gtk_editable_set_text (GTK_EDITABLE (row), "9999999");
  g_assert_true (gtk_widget_has_css_class (row, "error"));
  g_assert_false (lb_checked_row_commit (LB_CHECKED_ROW (row)));
  gtk_editable_set_text (GTK_EDITABLE (row), "+3.1 ft");
  g_assert_true (lb_checked_row_commit (LB_CHECKED_ROW (row)));
  now = &lb_job_get_fold (fixture->job)->assumptions;
  g_assert_cmpfloat_with_epsilon (now->value[LB_ASSUME_WATER_LEVEL], 3.1 * 0.3048, 1e-9);
  g_assert_true (now->is_own[LB_ASSUME_WATER_LEVEL]);
  assert_reads (lb_checked_row_get_note_row (LB_CHECKED_ROW (row)), "the default is");
  /* The sheet's own row follows. */
  g_assert_cmpstr (
    gtk_editable_get_text (GTK_EDITABLE (find (fixture->sheet, is_row, "Water level"))), ==, "3.1");

  g_signal_emit_by_name (find (row, has_icon, "edit-undo-symbolic"), "clicked");
  now = &lb_job_get_fold (fixture->job)->assumptions;
  g_assert_false (now->is_own[LB_ASSUME_WATER_LEVEL]);
  gtk_window_destroy (GTK_WINDOW (window));
  g_assert_null (window);
}

int
main (int argc, char *argv[])
{
  static const struct
  {
    const char *path;
    void (*test) (Fixture *fixture, gconstpointer data);
  } tests[] = {
    { "/pile-sheet/touch", test_touch },
    { "/pile-sheet/touch-that-moves", test_touch_that_moves },
    { "/pile-sheet/keys", test_keys },
    { "/pile-sheet/looking-ahead", test_looking_ahead },
    { "/pile-sheet/steps-are-said", test_steps_are_said },
    { "/pile-sheet/play-stops-at-the-hold", test_play_stops_at_the_hold },
    { "/pile-sheet/no-steps", test_no_steps },
    { "/pile-sheet/last-bar-severs", test_last_bar_severs },
    { "/pile-sheet/count", test_count },
    { "/pile-sheet/found-gone", test_found_gone },
    { "/pile-sheet/steps", test_steps },
    { "/pile-sheet/steps-are-named-once", test_steps_are_named_once },
    { "/pile-sheet/steps-are-in-sight", test_steps_are_in_sight },
    { "/pile-sheet/width-stays", test_width_stays },
    { "/pile-sheet/several", test_several },
    { "/pile-sheet/fact-refused", test_fact_refused },
    { "/pile-sheet/fact-stored", test_fact_stored },
    { "/pile-sheet/fact-half-typed", test_fact_half_typed },
    { "/pile-sheet/fact-chosen", test_fact_chosen },
    { "/pile-sheet/history", test_history },
    { "/pile-sheet/figures", test_figures },
    { "/pile-sheet/note-by-enter", test_note_by_enter },
    { "/pile-sheet/reasons-are-whole", test_reasons_are_whole },
    { "/pile-sheet/defaults", test_defaults },
  };

  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  for (gsize i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].path, Fixture, NULL, set_up, tests[i].test, tear_down);
  return g_test_run ();
}
