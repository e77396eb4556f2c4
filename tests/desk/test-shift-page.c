/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The Shift page under the keys: a typed line, what is refused, dives, rows' own take-back. */
#include "desk/shift/conditions-group.h"
#include "desk/shift/crew-group.h"
#include "desk/shift/dive-group.h"
#include "desk/shift/lost-group.h"
#include "desk/shift/pile-lines.h"
#include "desk/shift/shift-page.h"
#include "desk/shift/used-group.h"
#include "find-widget.h"
#include "small-job.h"

#include <adwaita.h>

typedef struct
{
  char *path;
  LbJob *job;
  LbSelection *selection;
  GtkWidget *window;
  GtkWidget *page;
  GtkWidget *lines;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer is_read_only)
{
  fixture->path = small_job_create ();
  fixture->job = is_read_only != NULL ? small_job_open_read_only (fixture->path)
                                      : small_job_open (fixture->path);
  fixture->selection = lb_selection_new ();
  fixture->page = g_object_new (LB_TYPE_SHIFT_PAGE, NULL);
  g_object_set (fixture->page, "selection", fixture->selection, "job", fixture->job, NULL);
  fixture->window = gtk_window_new ();
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->page);
  gtk_window_present (GTK_WINDOW (fixture->window));
  gtk_test_widget_wait_for_draw (fixture->window);
  fixture->lines = find_widget (fixture->page, LB_TYPE_PILE_LINES, NULL);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_object_add_weak_pointer (G_OBJECT (fixture->page), (gpointer *) &fixture->page);
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  while (fixture->page != NULL && g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_null (fixture->page);
  g_assert_finalize_object (fixture->selection);
  g_assert_finalize_object (fixture->job);
  small_job_remove (fixture->path);
}

/* A field of the line, by its place. */
static LbField *
field_at (Fixture *fixture, int column)
{
  static const char *const captions[] = { "Pile", "Bars",           "Minutes",
                                          "Rods", "Oxygen (cu ft)", "Note" };

  return LB_FIELD (find_widget (fixture->lines, LB_TYPE_FIELD, captions[column]));
}

#define N_FIELDS 6

static void
type_line (Fixture *fixture, const char *const *texts)
{
  for (int i = 0; texts[i] != NULL; i++)
    lb_field_set_text (field_at (fixture, i), texts[i]);
}

static void
press_enter (Fixture *fixture)
{
  g_signal_emit_by_name (lb_field_get_entry (field_at (fixture, 0)), "activate");
}

static const LbPileState *
state_of (Fixture *fixture, const char *mark)
{
  const LbFold *fold = lb_job_get_fold (fixture->job);

  return &fold->states[lb_fold_find_mark (fold, mark)];
}

static guint
count_entries (Fixture *fixture)
{
  return lb_job_get_ledger (fixture->job)->entries->len;
}

static void
test_line_is_one_act (Fixture *fixture, gconstpointer data)
{
  const char *const line[] = { "b2", "3", "21,5", "4", "90", "poor visibility", NULL };
  g_autoptr (GError) error = NULL;
  const guint before = count_entries (fixture);
  GtkWidget *row;

  type_line (fixture, line);
  gtk_toggle_button_set_active (
    GTK_TOGGLE_BUTTON (find_widget (fixture->lines, GTK_TYPE_TOGGLE_BUTTON, "cleaned")), TRUE);
  press_enter (fixture);

  g_assert_cmpuint (count_entries (fixture), ==, before + 6);
  for (guint i = before; i < before + 6; i++)
    g_assert_cmpstr (lb_ledger_entry (lb_job_get_ledger (fixture->job), i)->act, ==,
                     lb_ledger_entry (lb_job_get_ledger (fixture->job), before)->act);
  g_assert_cmpuint (state_of (fixture, "B2")->n_left, ==, 5);
  g_assert_cmpint (state_of (fixture, "B2")->step, ==, LB_STEP_CLEANED);
  g_assert_cmpfloat_with_epsilon (lb_job_get_fold (fixture->job)->job.trigger_s, 21.5 * 60, 1e-6);

  /* The line is empty again and the hands are at the mark. */
  for (int i = 0; i < N_FIELDS; i++)
    g_assert_cmpstr (lb_field_get_text (field_at (fixture, i)), ==, "");
  g_assert_true (gtk_widget_is_ancestor (gtk_root_get_focus (GTK_ROOT (fixture->window)),
                                         lb_field_get_entry (field_at (fixture, 0))));
  row = find_widget (fixture->lines, ADW_TYPE_ACTION_ROW, "B2");
  g_assert_nonnull (row);
  g_assert_nonnull (strstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), "3 bars"));
  /* The pile's rods stand on its line, not once more among the shift's. */
  g_assert_null (find_widget (find_widget (fixture->page, LB_TYPE_USED_GROUP, NULL),
                              ADW_TYPE_ACTION_ROW, "4 rods used"));

  lb_job_take_back (fixture->job, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (state_of (fixture, "B2")->n_left, ==, 8);
  g_assert_cmpint (state_of (fixture, "B2")->step, ==, LB_STEP_STANDING);
  g_assert_null (find_widget (fixture->lines, ADW_TYPE_ACTION_ROW, "B2"));
}

static void
assert_refused (Fixture *fixture, const char *const *line, int wrong, const char *said)
{
  const guint before = count_entries (fixture);

  type_line (fixture, line);
  press_enter (fixture);
  g_assert_cmpuint (count_entries (fixture), ==, before);
  g_assert_nonnull (find_widget (fixture->lines, GTK_TYPE_LABEL, said));
  g_assert_true (
    gtk_widget_has_css_class (lb_field_get_entry (field_at (fixture, wrong)), "error"));
  gtk_test_accessible_assert_state (lb_field_get_entry (field_at (fixture, wrong)),
                                    GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);
}

static void
test_wrong_lines_are_refused (Fixture *fixture, gconstpointer data)
{
  const char *const no_pile[] = { "Q9", "3", "", "", "", "", NULL };
  const char *const no_number[] = { "B2", "three", "", "", "", "", NULL };
  const char *const half_a_bar[] = { "B2", "2.5", "", "", "", "", NULL };
  const char *const less[] = { "B2", "2", "-4", "", "", "", NULL };
  const char *const nothing[] = { "B2", "", "", "", "", "", NULL };

  assert_refused (fixture, no_pile, 0, "There is no pile “Q9” in this job");
  assert_refused (fixture, no_number, 1, "“three” is not a number; type it as 12 or 12.5");
  assert_refused (fixture, half_a_bar, 1, "Bars are counted in whole numbers, up to 60");
  assert_refused (fixture, less, 2, "“-4” is less than nothing");
  assert_refused (fixture, nothing, 1,
                  "Say what was done: bars, a step, minutes, rods, oxygen or a note");
  g_assert_cmpint (lb_job_get_shift (fixture->job), ==, -1);
}

static void
test_severed_burns_those_left (Fixture *fixture, gconstpointer data)
{
  const char *const three[] = { "A1", "3", NULL };
  const char *const none[] = { "A1", "", NULL };

  type_line (fixture, three);
  press_enter (fixture);
  type_line (fixture, none);
  gtk_toggle_button_set_active (
    GTK_TOGGLE_BUTTON (find_widget (fixture->lines, GTK_TYPE_TOGGLE_BUTTON, "severed")), TRUE);
  press_enter (fixture);
  g_assert_cmpuint (state_of (fixture, "A1")->n_left, ==, 0);
  g_assert_cmpint (state_of (fixture, "A1")->step, ==, LB_STEP_SEVERED);
  g_assert_cmpuint (state_of (fixture, "A1")->flags & LB_FLAG_SEVERED_WITH_BARS, ==, 0);
}

/* A mark touched on the plan is in the line. */
static void
test_selection_fills_the_mark (Fixture *fixture, gconstpointer data)
{
  lb_selection_set_current (fixture->selection,
                            lb_fold_find_mark (lb_job_get_fold (fixture->job), "C3"));
  g_assert_cmpstr (lb_field_get_text (field_at (fixture, 0)), ==, "C3");
}

/* So are several. */
static void
test_several_piles_are_one_act (Fixture *fixture, gconstpointer data)
{
  const char *const line[] = { "A1 to A3, B2", "2", "", "1", NULL };
  const LbFold *fold = lb_job_get_fold (fixture->job);
  const guint picked[] = { (guint) lb_fold_find_mark (fold, "A1"),
                           (guint) lb_fold_find_mark (fold, "B2") };
  g_autoptr (GError) error = NULL;

  lb_selection_set_piles (fixture->selection, picked, 2);
  g_assert_cmpstr (lb_field_get_text (field_at (fixture, 0)), ==, "A1, B2");
  type_line (fixture, line);
  g_assert_nonnull (
    find_widget (fixture->lines, GTK_TYPE_LABEL, "4 piles: what is typed counts for each"));
  press_enter (fixture);
  for (int i = 0; i < 3; i++) {
    const char mark[] = { 'A', (char) ('1' + i), '\0' };

    g_assert_cmpuint (state_of (fixture, mark)->n_left, ==, 6);
  }
  g_assert_cmpuint (state_of (fixture, "B2")->n_left, ==, 6);
  g_assert_cmpfloat_with_epsilon (lb_job_get_fold (fixture->job)->job.rods, 4, 1e-9);
  lb_job_take_back (fixture->job, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (state_of (fixture, "A2")->n_left, ==, 8);
  g_assert_cmpuint (state_of (fixture, "B2")->n_left, ==, 8);
}

static gboolean
is_wrong (GtkWidget *group, const char *title)
{
  LbField *field = LB_FIELD (find_widget (group, LB_TYPE_FIELD, title));

  return gtk_widget_has_css_class (lb_field_get_entry (field), "error");
}

static void
type_field (GtkWidget *group, const char *title, const char *text)
{
  GtkWidget *field = find_widget (group, LB_TYPE_FIELD, title);

  g_assert_nonnull (field);
  lb_field_set_text (LB_FIELD (field), text);
}

static void
record_dive (GtkWidget *group, const char *left, const char *bottom, const char *up)
{
  type_field (group, "Left surface", left);
  type_field (group, "Left bottom", bottom);
  type_field (group, "Reached surface", up);
  g_signal_emit_by_name (find_widget (group, GTK_TYPE_BUTTON, "Record Dive"), "clicked");
}

/* Types into a field and presses Enter. */
static void
say (GtkWidget *group, const char *title, const char *text)
{
  type_field (group, title, text);
  g_signal_emit_by_name (lb_field_get_entry (LB_FIELD (find_widget (group, LB_TYPE_FIELD, title))),
                         "activate");
}

#define PAST "Past the no-stop limit: the diving supervisor’s table decides"

/* Noon is a time of its day, whatever watch it is now. */
static void
open_day_shift (Fixture *fixture)
{
  const char *watch;
  g_autoptr (GError) error = NULL;

  lb_job_open_shift (fixture->job, lb_job_present_day (&watch), "day", &error);
  g_assert_no_error (error);
}

static void
test_dives (Fixture *fixture, gconstpointer data)
{
  GtkWidget *group = find_widget (fixture->page, LB_TYPE_DIVE_GROUP, NULL);
  const LbTotals *totals;

  type_field (group, "Diver", "diver 2");
  type_field (group, "Pneumo depth (ft)", "38");
  /* Refused, and not even a shift is opened. */
  record_dive (group, "09:10", "08:10", "");
  g_assert_true (is_wrong (group, "Left bottom"));
  record_dive (group, "07:10", "08:10", "08:00");
  g_assert_true (is_wrong (group, "Reached surface"));
  record_dive (group, "7.10", "08:10", "");
  g_assert_cmpuint (lb_job_get_ledger (fixture->job)->shifts->len, ==, 0);

  open_day_shift (fixture);
  /* 40 ft by the table: no-stop limit 163 min, U.S. Navy Diving Manual, revision 7, table 9-7. */
  record_dive (group, "07:10", "08:02", "08:05");
  g_assert_nonnull (find_widget (group, GTK_TYPE_LABEL, "52 of 163 min"));
  record_dive (group, "09:00", "12:00", "12:05");
  /* Group F, E after 55 min: 45 min count, tables 9-7 and 9-8. */
  g_assert_nonnull (find_widget (group, GTK_TYPE_LABEL, "180 + 45 min: PAST the limit of 163"));
  g_assert_nonnull (find_widget (group, GTK_TYPE_LABEL, PAST));
  totals = &lb_job_get_fold (fixture->job)->shifts[lb_job_get_shift (fixture->job)];
  g_assert_cmpuint (totals->n_dives, ==, 2);
}

/* 40 ft by the table for 100 min, two hours up: 163 - 85 = 78 min are open, by the tables of the U.S.
 * Navy Diving Manual, revision 7. */
static void
test_second_dive (Fixture *fixture, gconstpointer data)
{
  GtkWidget *group = find_widget (fixture->page, LB_TYPE_DIVE_GROUP, NULL);
  GtkWidget *typed, *first;

  open_day_shift (fixture);
  g_assert_null (find_widget (group, ADW_TYPE_ACTION_ROW, "diver 1"));
  type_field (group, "Diver", "diver 1");
  type_field (group, "Pneumo depth (ft)", "39");
  record_dive (group, "00:00", "01:40", "01:42");
  /* Whatever the clock says, it is within 16 hours of this. */
  record_dive (group, "23:00", "23:01", "23:02");
  g_assert_nonnull (find_widget (group, ADW_TYPE_ACTION_ROW, "diver 1"));
  g_signal_emit_by_name (find_widget (find_widget (group, ADW_TYPE_ACTION_ROW,
                                                   "Dive, diver 1: 39 ft, bottom time 1 min"),
                                      GTK_TYPE_BUTTON, NULL),
                         "clicked");

  typed = find_widget (group, ADW_TYPE_ACTION_ROW, "This diver has");
  g_assert_false (gtk_widget_get_visible (typed));
  type_field (group, "Diver", " Diver 1");
  type_field (group, "Left surface", "03:42");
  g_assert_true (gtk_widget_get_visible (typed));
  g_assert_cmpstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (typed)), ==,
                   "group I at 03:42 · open without stops: 78 min at 39 ft");
  g_assert_null (find_widget (typed, GTK_TYPE_LEVEL_BAR, NULL));
  type_field (group, "Left bottom", "05:00");
  g_assert_nonnull (find_widget (typed, GTK_TYPE_LABEL, "78 + 85 of 163 min"));
  g_assert_null (find_widget (typed, GTK_TYPE_LABEL, PAST));
  type_field (group, "Left bottom", "05:01");
  g_assert_nonnull (find_widget (typed, GTK_TYPE_LABEL, "79 + 85 min: PAST the limit of 163"));
  g_assert_nonnull (find_widget (typed, GTK_TYPE_LABEL, PAST));
  g_assert_null (find_widget (typed, GTK_TYPE_LABEL, "78 + 85 of 163 min"));

  record_dive (group, "03:42", "05:00", "05:02");
  g_assert_false (gtk_widget_get_visible (typed));
  g_assert_nonnull (find_widget (group, GTK_TYPE_LABEL, "78 + 85 of 163 min"));
  /* The first dive goes, and with it what it counted. */
  first = find_widget (group, ADW_TYPE_ACTION_ROW, "Dive, diver 1: 39 ft, bottom time 100 min");
  g_signal_emit_by_name (find_widget (first, GTK_TYPE_BUTTON, NULL), "clicked");
  g_assert_null (find_widget (group, GTK_TYPE_LABEL, "78 + 85 of 163 min"));
  g_assert_nonnull (find_widget (group, GTK_TYPE_LABEL, "78 of 163 min"));

  /* Nothing can be told of a diver whose last dive has no end. */
  record_dive (group, "06:00", "06:30", "");
  type_field (group, "Left surface", "07:42");
  g_assert_nonnull (strstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (typed)), "not written"));
}

/* A row's own button takes back its entry whichever came later; rows that stay are not made anew,
 * and the focus goes to the row in its place. */
static void
test_rows_take_back (Fixture *fixture, gconstpointer data)
{
  GtkWidget *group = find_widget (fixture->page, LB_TYPE_USED_GROUP, NULL);
  GtkWidget *stays, *goes, *button;

  say (group, "Rods used", "12");
  say (group, "Rods used", "none");
  g_assert_true (is_wrong (group, "Rods used"));
  say (group, "Rods used", "7");
  g_assert_false (is_wrong (group, "Rods used"));

  stays = find_widget (group, ADW_TYPE_ACTION_ROW, "7 rods used");
  goes = find_widget (group, ADW_TYPE_ACTION_ROW, "12 rods used");
  g_assert_nonnull (stays);
  button = find_widget (goes, GTK_TYPE_BUTTON, NULL);
  gtk_test_accessible_assert_property (button, GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Take back: 12 rods used");
  gtk_widget_grab_focus (button);
  g_signal_emit_by_name (button, "clicked");
  g_assert_null (find_widget (group, ADW_TYPE_ACTION_ROW, "12 rods used"));
  g_assert_true (find_widget (group, ADW_TYPE_ACTION_ROW, "7 rods used") == stays);
  g_assert_true (gtk_root_get_focus (GTK_ROOT (fixture->window)) == stays);
  g_assert_cmpfloat (lb_job_get_fold (fixture->job)->job.rods, ==, 7);
}

/* What was said last goes for the next pile in the bent, as long as there is one that is not out. */
static void
test_same_again (Fixture *fixture, gconstpointer data)
{
  const char *const line[] = { "A1", "2", "10", "3", "", "loose at the head", NULL };
  GtkWidget *same = find_widget (fixture->lines, GTK_TYPE_BUTTON, "Same for Next");
  const LbFold *fold;

  g_assert_false (gtk_widget_get_sensitive (same));
  type_line (fixture, line);
  gtk_toggle_button_set_active (
    GTK_TOGGLE_BUTTON (find_widget (fixture->lines, GTK_TYPE_TOGGLE_BUTTON, "cleaned")), TRUE);
  press_enter (fixture);
  g_assert_cmpstr (gtk_button_get_label (GTK_BUTTON (same)), ==, "Same for B1");
  g_signal_emit_by_name (same, "clicked");
  g_assert_cmpuint (state_of (fixture, "B1")->n_left, ==, 6);
  g_assert_cmpint (state_of (fixture, "B1")->step, ==, LB_STEP_CLEANED);
  fold = lb_job_get_fold (fixture->job);
  g_assert_cmpfloat (fold->job.rods, ==, 6);
  g_assert_cmpfloat (fold->job.trigger_s, ==, 2 * 600);
  /* The note is about its own pile. */
  g_assert_null (strstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (
                           find_widget (fixture->lines, ADW_TYPE_ACTION_ROW, "B1"))),
                         "loose"));
  g_assert_cmpstr (gtk_button_get_label (GTK_BUTTON (same)), ==, "Same for C1");
  g_signal_emit_by_name (same, "clicked");
  g_assert_cmpuint (state_of (fixture, "C1")->n_left, ==, 6);
  /* The bent ends here. */
  g_assert_false (gtk_widget_get_sensitive (same));
}

/* One act holds all of a dive; its row says it, and what its record lacks. */
static void
test_dive_says_all (Fixture *fixture, gconstpointer data)
{
  GtkWidget *group = find_widget (fixture->page, LB_TYPE_DIVE_GROUP, NULL);
  GtkWidget *row;
  const LbTotals *totals;
  const char *said;

  open_day_shift (fixture);
  type_field (group, "Diver", "diver 1");
  type_field (group, "Pneumo depth (ft)", "38");
  type_field (group, "Piles", "A1, A2");
  type_field (group, "Bars", "2");
  type_field (group, "Diving mode", "surface-supplied air");
  record_dive (group, "710", "+52", "+3");
  g_assert_true (is_wrong (group, "Piles")); /* whose bars? */
  type_field (group, "Piles", "A1");
  type_field (group, "Rods", "4");
  record_dive (group, "710", "+52", "+3");
  totals = &lb_job_get_fold (fixture->job)->shifts[lb_job_get_shift (fixture->job)];
  g_assert_cmpuint (totals->bars, ==, 2);
  g_assert_cmpfloat (totals->rods, ==, 4);
  g_assert_cmpfloat (totals->bottom_s, ==, 52 * 60);
  row = find_widget (group, ADW_TYPE_ACTION_ROW, "Dive, diver 1: 38 ft, bottom time 52 min");
  g_assert_true (gtk_widget_is_visible (row));
  said = adw_action_row_get_subtitle (ADW_ACTION_ROW (row));
  g_assert_true (g_str_has_prefix (said, "surface-supplied air · 2 bars"));
  g_assert_nonnull (strstr (said, " · 4 rods used"));
  g_assert_nonnull (strstr (said, "Not said: nature of work, the visibility"));
  /* Its rods are not listed once more. */
  g_assert_null (find_widget (find_widget (fixture->page, LB_TYPE_USED_GROUP, NULL),
                              ADW_TYPE_ACTION_ROW, "4 rods used"));

  /* Who has been up longest dives next. */
  type_field (group, "Diver", "diver 2");
  record_dive (group, "930", "+40", "");
  g_assert_cmpstr (lb_field_get_text (LB_FIELD (find_widget (group, LB_TYPE_FIELD, "Diver"))), ==,
                   "diver 1");
  g_assert_cmpstr (lb_field_get_text (LB_FIELD (find_widget (group, LB_TYPE_FIELD, "Rods"))), ==,
                   "");
}

/* A field shows what was said last, in this shift, and says it once. */
static void
test_conditions_and_crew (Fixture *fixture, gconstpointer data)
{
  GtkWidget *conditions = find_widget (fixture->page, LB_TYPE_CONDITIONS_GROUP, NULL);
  GtkWidget *crew = find_widget (fixture->page, LB_TYPE_CREW_GROUP, NULL);
  LbField *wind = LB_FIELD (find_widget (conditions, LB_TYPE_FIELD, "Wind"));
  GtkWidget *same = find_widget (crew, GTK_TYPE_BUTTON, "Crew as Before");
  g_autoptr (GError) error = NULL;
  guint before;

  open_day_shift (fixture);
  say (conditions, "Wind", " SW 10 kn ");
  g_assert_cmpstr (lb_field_get_text (wind), ==, "SW 10 kn");
  before = count_entries (fixture);
  say (conditions, "Wind", "SW 10 kn");
  g_assert_cmpuint (count_entries (fixture), ==, before);
  say (conditions, "Wind", "");
  g_assert_cmpstr (lb_field_get_text (wind), ==, "SW 10 kn");
  g_assert_true (lb_job_take_back (fixture->job, &error));
  g_assert_cmpstr (lb_field_get_text (wind), ==, "");

  say (crew, "Diving supervisor", "superintendent");
  say (crew, "Began", "600");
  g_assert_false (is_wrong (crew, "Began"));
  say (crew, "Ended", "530");
  g_assert_true (is_wrong (crew, "Ended"));
  before = count_entries (fixture);
  say (crew, "Ended", "1630");
  g_assert_cmpuint (count_entries (fixture), ==, before + 1);
  g_assert_cmpstr (lb_field_get_text (LB_FIELD (find_widget (crew, LB_TYPE_FIELD, "Began"))), ==,
                   "06:00");
  g_assert_false (gtk_widget_get_visible (same));

  /* The next shift asks for the same crew with one press. */
  lb_job_open_shift (fixture->job, lb_ledger_shift (lb_job_get_ledger (fixture->job), 0)->day + 1,
                     "day", &error);
  g_assert_no_error (error);
  g_assert_true (gtk_widget_get_visible (same));
  g_signal_emit_by_name (same, "clicked");
  g_assert_cmpstr (
    lb_field_get_text (LB_FIELD (find_widget (crew, LB_TYPE_FIELD, "Diving supervisor"))), ==,
    "superintendent");
  g_assert_cmpstr (lb_field_get_text (LB_FIELD (find_widget (crew, LB_TYPE_FIELD, "Began"))), ==,
                   "");
}

/* A delay with who bears it, a fault with what was done; the words are the file's. */
static void
test_lost_time (Fixture *fixture, gconstpointer data)
{
  GtkWidget *group = find_widget (fixture->page, LB_TYPE_LOST_GROUP, NULL);
  const LbLedger *ledger = lb_job_get_ledger (fixture->job);
  const LbEntry *delay, *detail;
  guint before;

  type_field (group, "Cause of delay", "Current");
  type_field (group, "Borne by", "owner");
  say (group, "Minutes of delay", "45");
  ledger = lb_job_get_ledger (fixture->job);
  delay = lb_ledger_entry (ledger, ledger->entries->len - 2);
  detail = lb_ledger_entry (ledger, ledger->entries->len - 1);
  g_assert_cmpint (delay->kind, ==, LB_ENTRY_DELAY);
  g_assert_cmpstr (delay->what, ==, "current");
  g_assert_cmpint (detail->kind, ==, LB_ENTRY_DETAIL);
  g_assert_cmpstr (detail->note, ==, "owner");
  g_assert_nonnull (find_widget (group, ADW_TYPE_ACTION_ROW, "Delay, current: 45 min"));
  before = ledger->entries->len;
  say (group, "Minutes of delay", "20"); /* put to nothing */
  g_assert_true (is_wrong (group, "Cause of delay"));
  g_assert_cmpuint (count_entries (fixture), ==, before);

  type_field (group, "Gear that failed", "dead switch");
  say (group, "What was done", "spare fitted");
  g_assert_nonnull (find_widget (group, ADW_TYPE_ACTION_ROW, "Gear fault, dead switch"));
}

/* Take back and redo reach to the beginning of the unsigned shift, act by act. */
static void
test_take_back_reaches_far (Fixture *fixture, gconstpointer data)
{
  const guint n = 40;
  GtkWidget *used = find_widget (fixture->page, LB_TYPE_USED_GROUP, NULL);
  g_autoptr (GError) error = NULL;
  guint back = 0, again = 0;

  for (guint i = 0; i < n; i++)
    say (used, "Rods used", "1");
  g_assert_cmpfloat (lb_job_get_fold (fixture->job)->job.rods, ==, n);
  while (lb_job_can_take_back (fixture->job)) {
    g_assert_true (lb_job_take_back (fixture->job, &error));
    back++;
  }
  g_assert_cmpuint (back, ==, n);
  g_assert_cmpfloat (lb_job_get_fold (fixture->job)->job.rods, ==, 0);
  while (lb_job_can_redo (fixture->job)) {
    g_assert_true (lb_job_redo (fixture->job, &error));
    again++;
  }
  g_assert_cmpuint (again, ==, n);
  g_assert_cmpfloat (lb_job_get_fold (fixture->job)->job.rods, ==, n);
}

/* What is left is said as soon as it was counted. */
static void
test_stock (Fixture *fixture, gconstpointer data)
{
  GtkWidget *group = find_widget (fixture->page, LB_TYPE_USED_GROUP, NULL);

  g_assert_nonnull (
    find_widget (group, GTK_TYPE_LABEL, "Rods were never counted: what is left is not known"));
  say (group, "Rods at the end", "150");
  g_assert_nonnull (find_widget (group, GTK_TYPE_LABEL,
                                 "150 rods left; none used yet, so for how long is not known"));
  say (group, "Rods used", "30");
  g_assert_nonnull (find_widget (group, GTK_TYPE_LABEL,
                                 "150 rods left: 5 shifts at 30 a shift, the mean of the last 1"));
  say (group, "Full ones at the end", "0");
  g_assert_nonnull (find_widget (group, ADW_TYPE_ACTION_ROW, "Full oxygen cylinders on hand: 0"));
}

static void
test_read_only (Fixture *fixture, gconstpointer data)
{
  g_assert_false (gtk_widget_is_sensitive (fixture->lines));
  g_assert_false (gtk_widget_is_sensitive (find_widget (fixture->page, LB_TYPE_DIVE_GROUP, NULL)));
}

int
main (int argc, char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();

#define ADD(name, func) g_test_add ("/shift-page/" name, Fixture, NULL, set_up, func, tear_down)

  ADD ("line-is-one-act", test_line_is_one_act);
  ADD ("wrong-lines-are-refused", test_wrong_lines_are_refused);
  ADD ("severed-burns-those-left", test_severed_burns_those_left);
  ADD ("selection-fills-the-mark", test_selection_fills_the_mark);
  ADD ("several-piles-are-one-act", test_several_piles_are_one_act);
  ADD ("dives", test_dives);
  ADD ("second-dive", test_second_dive);
  ADD ("rows-take-back", test_rows_take_back);
  ADD ("same-again", test_same_again);
  ADD ("dive-says-all", test_dive_says_all);
  ADD ("conditions-and-crew", test_conditions_and_crew);
  ADD ("lost-time", test_lost_time);
  ADD ("take-back-reaches-far", test_take_back_reaches_far);
  ADD ("stock", test_stock);
  g_test_add ("/shift-page/read-only", Fixture, "read-only", set_up, test_read_only, tear_down);

  return g_test_run ();
}
