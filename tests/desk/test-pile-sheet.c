/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pile sheet under the hand: bars touched, walked and counted, steps, history; asked by what the
 * job says afterwards and what can be read on the sheet. */
#include "desk/sheet/bars-popover.h"
#include "desk/sheet/history-entry.h"
#include "desk/sheet/history-list.h"
#include "desk/sheet/pile-event.h"
#include "desk/sheet/section-view.h"
#include "desk/sheet/sheet-pile.h"
#include "draw/plan-words.h"
#include "sheet-fixture.h"
#include "small-job.h"

#include <adwaita.h>

static void
test_touch (SheetFixture *fixture, gconstpointer data)
{
  sheet_assert_reads (fixture->sheet, "standing");
  sheet_touch_bar (fixture, 2);
  g_assert_cmphex (sheet_state_of (fixture, SHEET_PILE)->burned, ==, LB_BAR (2));
  sheet_assert_reads (fixture->sheet, "7 of 8 bars left");
  sheet_assert_reads (sheet_find_type (fixture->sheet, LB_TYPE_HISTORY_LIST), "Bar 3 burned");

  /* A touch never unburns. */
  sheet_touch_bar (fixture, 2);
  g_assert_cmphex (sheet_state_of (fixture, SHEET_PILE)->burned, ==, LB_BAR (2));
}

/* A finger that moves on scrolls the sheet; one that rests beside a bar means the nearest. */
static void
test_touch_that_moves (SheetFixture *fixture, gconstpointer data)
{
  double x, y;

  lb_section_view_bar_place (LB_SECTION_VIEW (fixture->section), 0, &x, &y);
  g_signal_emit_by_name (sheet_section_click (fixture), "pressed", 1, x, y);
  g_signal_emit_by_name (sheet_section_click (fixture), "released", 1, x, y + 60);
  g_signal_emit_by_name (sheet_section_click (fixture), "released", 1, x, y);
  g_assert_cmphex (sheet_state_of (fixture, SHEET_PILE)->burned, ==, 0);

  g_signal_emit_by_name (sheet_section_click (fixture), "pressed", 1, x, y - 20);
  g_signal_emit_by_name (sheet_section_click (fixture), "released", 1, x, y - 20);
  g_assert_cmphex (sheet_state_of (fixture, SHEET_PILE)->burned, ==, LB_BAR (0));
}

static void
test_keys (SheetFixture *fixture, gconstpointer data)
{
  LbSheetPile shown;
  guint8 order[2];

  lb_sheet_pile_load (&shown, fixture->job, SHEET_PILE);
  memcpy (order, shown.plan.order, sizeof order);
  gtk_test_accessible_assert_role (fixture->section, GTK_ACCESSIBLE_ROLE_IMG);
  /* The focus begins at the first to burn. */
  gtk_widget_grab_focus (fixture->section);
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_Right));
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_space));
  g_assert_cmphex (sheet_state_of (fixture, SHEET_PILE)->burned, ==, LB_BAR (order[1]));

  /* On from a burned bar is the next in the order, which is another one now that the burner left
   * it. */
  lb_sheet_pile_load (&shown, fixture->job, SHEET_PILE);
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_Right));
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_Return));
  g_assert_cmphex (sheet_state_of (fixture, SHEET_PILE)->burned, ==,
                   LB_BAR (order[1]) | LB_BAR (shown.plan.order[0]));
}

static void
record_count (SheetFixture *fixture, int count, gboolean is_next)
{
  GtkWidget *popover = sheet_find_type (fixture->sheet, LB_TYPE_BARS_POPOVER);
  GtkWidget *spin = sheet_find_type (popover, GTK_TYPE_SPIN_BUTTON);
  GtkWidget *check = sheet_find_type (popover, GTK_TYPE_CHECK_BUTTON);

  gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), count);
  if (is_next)
    check = gtk_widget_get_next_sibling (check);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  sheet_click_button (popover, "Record");
}

/* Found gone from the keyboard: the menu key on a bar asks, and one press records it. */
static void
test_found_gone (SheetFixture *fixture, gconstpointer data)
{
  const guint n_before = lb_job_get_fold (fixture->job)->job.bars;
  GtkWidget *popover = sheet_find_type (fixture->sheet, LB_TYPE_BARS_POPOVER);
  GtkWidget *entry = sheet_find_type (popover, GTK_TYPE_ENTRY);
  LbSheetPile shown;

  lb_sheet_pile_load (&shown, fixture->job, SHEET_PILE);
  gtk_widget_grab_focus (fixture->section);

  const guint bar = shown.plan.order[0];
  g_autofree char *number = g_strdup_printf ("%u", bar + 1);

  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_Menu));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, number);
  sheet_click_button (popover, "Found Gone");
  g_assert_cmphex (sheet_state_of (fixture, SHEET_PILE)->gone, ==, LB_BAR (bar));
  g_assert_cmpuint (lb_job_get_fold (fixture->job)->job.bars, ==, n_before);

  /* What is no bar of the pile is said, and cannot be recorded. */
  gtk_editable_set_text (GTK_EDITABLE (entry), "61");
  g_assert_false (gtk_widget_get_sensitive (sheet_find (popover, sheet_is_button, "Found Gone")));
  gtk_editable_set_text (GTK_EDITABLE (entry), "60");
  sheet_assert_reads (popover, "The pile has bars 1 to 8");
}

static gsize
step_of (SheetFixture *fixture)
{
  return lb_section_view_get_step (LB_SECTION_VIEW (fixture->section));
}

/* Looking ahead in the order records nothing, by key or by button, and no touch does while one looks
 * ahead. */
static void
test_looking_ahead (SheetFixture *fixture, gconstpointer data)
{
  const gsize n_entries = lb_job_get_fold (fixture->job)->n_entries;
  GtkWidget *back = sheet_find (fixture->sheet, sheet_has_icon, "media-seek-backward-symbolic");
  GtkWidget *on = sheet_find (fixture->sheet, sheet_has_icon, "media-seek-forward-symbolic");

  sheet_assert_reads (fixture->sheet, "As it stands. Bar");
  g_assert_false (gtk_widget_get_sensitive (back));
  gtk_widget_grab_focus (fixture->section);
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_Page_Down));
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_period));
  g_assert_cmpuint (step_of (fixture), ==, 2);
  sheet_assert_reads (fixture->sheet, "2 of 8 bars burned.");
  g_assert_true (gtk_widget_get_sensitive (back));
  sheet_touch_bar (fixture, 0);
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_space));
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_comma));
  g_signal_emit_by_name (back, "clicked");
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_Page_Up));
  g_assert_cmpuint (step_of (fixture), ==, 0);

  for (int i = 0; i < 8; i++)
    g_signal_emit_by_name (on, "clicked");
  g_assert_cmpuint (step_of (fixture), ==, 8);
  g_assert_false (gtk_widget_get_sensitive (on));
  sheet_assert_reads (fixture->sheet, "Nothing but the hook holds the piece.");
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_Page_Down));
  g_assert_cmpuint (step_of (fixture), ==, 8);
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_Home));
  g_assert_cmpuint (step_of (fixture), ==, 0);
  g_assert_cmpuint (lb_job_get_fold (fixture->job)->n_entries, ==, n_entries);

  /* What is recorded is another order, of which no step was taken. */
  g_assert_true (sheet_press_key (fixture->section, GDK_KEY_Page_Down));
  sheet_click_button (fixture->sheet, "Burned: Next Bar");
  g_assert_cmpuint (step_of (fixture), ==, 0);
  sheet_touch_bar (fixture, 6);
  g_assert_true (sheet_state_of (fixture, SHEET_PILE)->burned & LB_BAR (6));
}

/* A screen reader hears the step, and the hook before its bar. */
static void
test_steps_are_said (SheetFixture *fixture, gconstpointer data)
{
  LbSheetPile shown;
  g_autofree char *hold = NULL;
  g_autofree char *step = NULL;
  g_autofree char *label = NULL;
  LbBarShares shares;
  gsize at;

  lb_sheet_pile_load (&shown, fixture->job, SHEET_PILE);
  g_assert_cmpuint (shown.plan.hold.rig_before, >, 1);
  at = shown.plan.hold.rig_before - 1;
  lb_section_view_set_step (LB_SECTION_VIEW (fixture->section), at);
  hold = lb_hold_point_text (&shown.plan, at);
  g_assert_nonnull (hold);
  sheet_assert_reads (fixture->sheet, hold);
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
test_play_stops_at_the_hold (SheetFixture *fixture, gconstpointer data)
{
  GtkWidget *play = sheet_find (fixture->sheet, sheet_has_icon, "media-playback-start-symbolic");
  gboolean is_over = FALSE;
  LbSheetPile shown;

  lb_sheet_pile_load (&shown, fixture->job, SHEET_PILE);
  g_assert_nonnull (play);
  g_signal_emit_by_name (play, "clicked");
  g_assert_null (sheet_find (fixture->sheet, sheet_has_icon, "media-playback-start-symbolic"));
  while (sheet_find (fixture->sheet, sheet_has_icon, "media-playback-pause-symbolic") != NULL)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (step_of (fixture), ==, shown.plan.hold.rig_before - 1);
  g_timeout_add (2000, set_flag_cb, &is_over);
  small_job_wait (&is_over);
  g_assert_cmpuint (step_of (fixture), ==, shown.plan.hold.rig_before - 1);

  /* Asked again it goes on; and it stops when it is stopped. */
  g_signal_emit_by_name (play, "clicked");
  while (step_of (fixture) < shown.plan.hold.rig_before)
    g_main_context_iteration (NULL, TRUE);
  if (sheet_find (fixture->sheet, sheet_has_icon, "media-playback-pause-symbolic") != NULL)
    g_signal_emit_by_name (play, "clicked");
  g_assert_nonnull (sheet_find (fixture->sheet, sheet_has_icon, "media-playback-start-symbolic"));
}

/* Bars of which only the count is known have no steps, and the sheet says why. */
static void
test_no_steps (SheetFixture *fixture, gconstpointer data)
{
  GtkWidget *on = sheet_find (fixture->sheet, sheet_has_icon, "media-seek-forward-symbolic");

  g_assert_true (gtk_widget_get_mapped (on));
  record_count (fixture, 2, FALSE);
  g_assert_false (gtk_widget_get_mapped (on));
  sheet_assert_reads (fixture->sheet, "No steps to show: Which bars are burned is not on record");
  g_assert_false (sheet_press_key (fixture->section, GDK_KEY_Page_Down));
}

static void
test_last_bar_severs (SheetFixture *fixture, gconstpointer data)
{
  for (int i = 0; i < 8; i++)
    sheet_click_button (fixture->sheet, "Burned: Next Bar");
  g_assert_cmpuint (sheet_state_of (fixture, SHEET_PILE)->n_left, ==, 0);
  g_assert_cmpint (sheet_state_of (fixture, SHEET_PILE)->step, ==, LB_STEP_SEVERED);
  g_assert_false (
    gtk_widget_get_sensitive (sheet_find (fixture->sheet, sheet_is_button, "Burned: Next Bar")));
}

static void
test_count (SheetFixture *fixture, gconstpointer data)
{
  LbSheetPile shown;
  LbBarSet next;

  lb_sheet_pile_load (&shown, fixture->job, SHEET_PILE);
  next = LB_BAR (shown.plan.order[0]) | LB_BAR (shown.plan.order[1]);
  record_count (fixture, 2, TRUE);
  g_assert_cmphex (sheet_state_of (fixture, SHEET_PILE)->burned, ==, next);
  record_count (fixture, 3, FALSE);
  g_assert_cmphex (sheet_state_of (fixture, SHEET_PILE)->burned, ==, next);
  g_assert_cmpuint (sheet_state_of (fixture, SHEET_PILE)->n_unplaced, ==, 3);
  g_assert_cmpuint (sheet_state_of (fixture, SHEET_PILE)->n_left, ==, 3);

  /* As many as are left, and no more, can be said; with the last it is severed. */
  record_count (fixture, 50, FALSE);
  g_assert_cmpuint (sheet_state_of (fixture, SHEET_PILE)->n_left, ==, 0);
  g_assert_cmpuint (sheet_state_of (fixture, SHEET_PILE)->flags, ==, 0);
  g_assert_cmpint (sheet_state_of (fixture, SHEET_PILE)->step, ==, LB_STEP_SEVERED);
}

static void
answer_all (SheetFixture *fixture, const char *reason)
{
  g_autoptr (GArray) findings = lb_findings_new (lb_job_get_ledger (fixture->job),
                                                 lb_job_get_fold (fixture->job));

  g_assert_cmpuint (findings->len, ==, 1);
  g_assert_true (
    lb_job_answer (fixture->job, &g_array_index (findings, LbFinding, 0), reason, NULL));
}

static void
test_steps (SheetFixture *fixture, gconstpointer data)
{
  sheet_click_button (fixture->sheet, "Cleaned");
  g_assert_cmpint (sheet_state_of (fixture, SHEET_PILE)->step, ==, LB_STEP_CLEANED);
  sheet_assert_reads (fixture->sheet, "cleaned");
  sheet_click_button (fixture->sheet, "Pulled");
  /* Pulled, with its bars never burned: the sheet says what to do, and then what was said to it. */
  sheet_assert_reads (fixture->sheet, "record how it came out");
  answer_all (fixture, "it broke in the sling");
  sheet_assert_reads (fixture->sheet, "Answered: it broke in the sling");
}

/* A screen reader says a step once: it has a name, and no second one from its label. */
static void
test_steps_are_named_once (SheetFixture *fixture, gconstpointer data)
{
  static const char *const steps[] = { "Cleaned", "Severed", "Rigged", "Pulled" };

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++) {
    GtkWidget *button = sheet_find (fixture->sheet, sheet_is_button, steps[i]);

    g_assert_nonnull (button);
    gtk_test_accessible_assert_property (button, GTK_ACCESSIBLE_PROPERTY_LABEL, steps[i]);
    g_assert_false (gtk_test_accessible_has_relation (GTK_ACCESSIBLE (button),
                                                      GTK_ACCESSIBLE_RELATION_LABELLED_BY));
  }
}

/* In a window of 1024 by 640 px the sheet has about 588 px, and steps are recorded without
 * scrolling, also for a pile that has something wrong with it. */
static void
test_steps_are_in_sight (SheetFixture *fixture, gconstpointer data)
{
  GtkWidget *scroller = sheet_find_type (fixture->sheet, GTK_TYPE_SCROLLED_WINDOW);

  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 372, 588);
  g_assert_true (
    lb_job_mark_step (fixture->job, (const guint[]){ SHEET_PILE }, 1, LB_STEP_PULLED, NULL));
  sheet_assert_reads (fixture->sheet, "record how it came out");
  for (int i = 0; i < 2; i++) {
    GtkWidget *button = sheet_find (fixture->sheet, sheet_is_button, "Pulled");
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
test_width_stays (SheetFixture *fixture, gconstpointer data)
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
test_several (SheetFixture *fixture, gconstpointer data)
{
  const guint piles[] = { 0, 1, 5 };

  lb_selection_set_piles (fixture->selection, piles, G_N_ELEMENTS (piles));
  sheet_assert_reads (fixture->sheet, "3 piles picked");
  sheet_assert_reads (fixture->sheet, "24 bars left\n3 standing");
  lb_job_mark_step (fixture->job, piles, 2, LB_STEP_SEVERED, NULL);
  sheet_assert_reads (fixture->sheet, "8 bars left\n1 standing\n2 severed");
  lb_selection_set_current (fixture->selection, -1);
  g_assert_false (gtk_widget_get_visible (sheet_find_type (fixture->sheet, GTK_TYPE_STACK)));
}

/* Enter records what was typed once, and closes the question. */
static void
test_note_by_enter (SheetFixture *fixture, gconstpointer data)
{
  const guint n_before = lb_job_get_ledger (fixture->job)->entries->len;
  GtkWidget *dialog = NULL;

  lb_pile_event_note (fixture->sheet, fixture->job, SHEET_PILE);
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *at = windows; at != NULL; at = at->next) {
    if (ADW_IS_MESSAGE_DIALOG (at->data))
      dialog = at->data;
  }
  g_assert_nonnull (dialog);
  g_object_add_weak_pointer (G_OBJECT (dialog), (gpointer *) &dialog);

  GtkWidget *row = sheet_find_type (dialog, ADW_TYPE_ENTRY_ROW);

  gtk_editable_set_text (GTK_EDITABLE (row), "spalled");
  g_signal_emit_by_name (row, "entry-activated");
  g_assert_null (dialog);
  g_assert_cmpuint (lb_job_get_ledger (fixture->job)->entries->len, ==, n_before + 1);
}

static void
test_history (SheetFixture *fixture, gconstpointer data)
{
  GtkWidget *history = sheet_find_type (fixture->sheet, LB_TYPE_HISTORY_LIST);
  GListModel *model = lb_history_list_get_model (LB_HISTORY_LIST (history));
  g_autoptr (LbHistoryEntry) newest = NULL;

  sheet_assert_reads (history, "Nothing was recorded yet");
  sheet_touch_bar (fixture, 0);
  sheet_touch_bar (fixture, 3);
  g_assert_cmpuint (g_list_model_get_n_items (model), ==, 2);
  g_assert_true (lb_job_take_back (fixture->job, NULL));
  g_assert_cmpuint (g_list_model_get_n_items (model), ==, 2);
  newest = g_list_model_get_item (model, 0);
  g_assert_cmpstr (lb_history_entry_get_text (newest), ==, "Bar 4 burned");
  g_assert_false (lb_history_entry_get_is_alive (newest));
  sheet_assert_reads (history, "taken back · ");
  g_assert_cmphex (sheet_state_of (fixture, SHEET_PILE)->burned, ==, LB_BAR (0));
  /* Two buttons that look alike are told apart by their names. */
  gtk_test_accessible_assert_property (sheet_find (history, sheet_has_icon, "edit-undo-symbolic"),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Take back: Bar 1 burned");

  lb_selection_set_current (fixture->selection, 7);
  g_assert_cmpuint (g_list_model_get_n_items (model), ==, 0);
}

int
main (int argc, char *argv[])
{
  static const struct
  {
    const char *path;
    void (*test) (SheetFixture *fixture, gconstpointer data);
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
    { "/pile-sheet/history", test_history },
    { "/pile-sheet/note-by-enter", test_note_by_enter },
  };

  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  for (gsize i = 0; i < G_N_ELEMENTS (tests); i++)
    g_test_add (tests[i].path, SheetFixture, NULL, sheet_set_up, tests[i].test, sheet_tear_down);
  return g_test_run ();
}
