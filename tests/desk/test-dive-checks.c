/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ticking before a dive: boxes touched, stored as one act, put to the picked dive, taken back. */
#include "desk/sheet/dive-checks.h"

#include "desk/sheet/caution-list.h"
#include "find-widget.h"
#include "small-job.h"

#include <adwaita.h>
#include <string.h>

#define PILE 4u

typedef struct
{
  char *path;
  LbJob *job;
  GtkWidget *window;
  GtkWidget *checks;
} Fixture;

static void
show (Fixture *fixture, guint pile)
{
  lb_dive_checks_show (LB_DIVE_CHECKS (fixture->checks), fixture->job, pile);
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->path = small_job_create ();
  fixture->job = small_job_open (fixture->path);
  fixture->checks = g_object_new (LB_TYPE_DIVE_CHECKS, NULL);
  fixture->window = gtk_window_new ();
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->checks);
  show (fixture, PILE);
  gtk_window_present (GTK_WINDOW (fixture->window));
  gtk_test_widget_wait_for_draw (fixture->window);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_object_add_weak_pointer (G_OBJECT (fixture->checks), (gpointer *) &fixture->checks);
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  while (fixture->checks != NULL && g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_null (fixture->checks);
  g_assert_finalize_object (fixture->job);
  small_job_remove (fixture->path);
}

/* The boxes that can be seen, those of the pile itself first. */
static void
gather_boxes (GtkWidget *parent, GPtrArray *boxes)
{
  if (!gtk_widget_get_visible (parent))
    return;
  if (GTK_IS_CHECK_BUTTON (parent))
    g_ptr_array_add (boxes, parent);
  for (GtkWidget *child = gtk_widget_get_first_child (parent); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gather_boxes (child, boxes);
}

static GPtrArray *
boxes_of (Fixture *fixture)
{
  GPtrArray *boxes = g_ptr_array_new ();

  gather_boxes (find_widget (fixture->checks, LB_TYPE_CAUTION_LIST, NULL), boxes);
  g_assert_cmpuint (boxes->len, >, 3);
  return boxes;
}

static guint
n_active (Fixture *fixture)
{
  g_autoptr (GPtrArray) boxes = boxes_of (fixture);
  guint n = 0;

  for (guint i = 0; i < boxes->len; i++)
    n += gtk_check_button_get_active (g_ptr_array_index (boxes, i)) ? 1 : 0;
  return n;
}

static void
touch_box (Fixture *fixture, guint i)
{
  g_autoptr (GPtrArray) boxes = boxes_of (fixture);
  GtkCheckButton *box = g_ptr_array_index (boxes, i);

  gtk_check_button_set_active (box, !gtk_check_button_get_active (box));
}

static GtkWidget *
button (Fixture *fixture, const char *label)
{
  return find_widget (fixture->checks, GTK_TYPE_BUTTON, label);
}

static void
press (Fixture *fixture, const char *label)
{
  g_assert_true (gtk_widget_get_sensitive (button (fixture, label)));
  g_signal_emit_by_name (button (fixture, label), "clicked");
}

#define RECORD "_Checked Before the Dive"
#define ALL    "Tick _All"

static guint
n_checks_on_record (Fixture *fixture, gboolean only_ticked)
{
  const LbLedger *ledger = lb_job_get_ledger (fixture->job);
  const LbFold *fold = lb_job_get_fold (fixture->job);
  guint n = 0;

  for (guint i = 0; i < ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (ledger, i);

    if (entry->kind == LB_ENTRY_CHECK && fold->is_alive[i] && entry->pile == (int) PILE &&
        (!only_ticked || entry->amount > 0))
      n++;
  }
  return n;
}

static void
record_dive (Fixture *fixture)
{
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_DIVE);
  g_autoptr (GError) error = NULL;

  draft.pile_id = lb_job_get_fold (fixture->job)->piles[PILE].id;
  draft.what = "diver 1";
  draft.start_us = g_get_real_time () + 60 * G_USEC_PER_SEC;
  lb_job_record (fixture->job, &draft, 1, &error);
  g_assert_no_error (error);
}

static void
test_one_act (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GPtrArray) boxes = boxes_of (fixture);
  const guint n = boxes->len;

  g_assert_false (gtk_widget_get_sensitive (button (fixture, RECORD)));
  touch_box (fixture, 0);
  touch_box (fixture, 2);
  g_assert_cmpuint (n_checks_on_record (fixture, FALSE), ==, 0);
  press (fixture, RECORD);
  g_assert_cmpuint (n_checks_on_record (fixture, FALSE), ==, n);
  g_assert_cmpuint (n_checks_on_record (fixture, TRUE), ==, 2);
  g_assert_false (gtk_widget_get_sensitive (button (fixture, RECORD)));
  g_assert_cmpuint (n_active (fixture), ==, 2);

  g_assert_true (lb_job_take_back (fixture->job, NULL));
  show (fixture, PILE);
  g_assert_cmpuint (n_checks_on_record (fixture, FALSE), ==, 0);
  g_assert_cmpuint (n_active (fixture), ==, 0);
}

/* What is ticked and not stored yet is still there after a look at another pile. */
static void
test_other_pile (Fixture *fixture, gconstpointer data)
{
  touch_box (fixture, 1);
  show (fixture, PILE + 1);
  g_assert_cmpuint (n_active (fixture), ==, 0);
  show (fixture, PILE);
  g_assert_cmpuint (n_active (fixture), ==, 1);
}

static void
test_dives (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GPtrArray) boxes = boxes_of (fixture);
  GtkWidget *drop = find_widget (fixture->checks, GTK_TYPE_DROP_DOWN, NULL);
  GListModel *titles;

  g_assert_false (gtk_widget_get_visible (gtk_widget_get_parent (drop)));
  press (fixture, ALL);
  press (fixture, RECORD);
  g_assert_cmpuint (n_checks_on_record (fixture, TRUE), ==, boxes->len);

  /* The dive takes them; the next one begins with none. */
  record_dive (fixture);
  show (fixture, PILE);
  titles = gtk_drop_down_get_model (GTK_DROP_DOWN (drop));
  g_assert_true (gtk_widget_get_visible (gtk_widget_get_parent (drop)));
  g_assert_cmpuint (g_list_model_get_n_items (titles), ==, 2);
  g_assert_cmpuint (n_active (fixture), ==, 0);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop), 1);
  g_assert_cmpuint (n_active (fixture), ==, boxes->len);

  /* A tick taken away is a new word on that dive alone. */
  touch_box (fixture, 0);
  press (fixture, RECORD);
  g_assert_cmpuint (n_checks_on_record (fixture, FALSE), ==, boxes->len + 1);
  g_assert_cmpuint (n_active (fixture), ==, boxes->len - 1);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();

#define ADD(name, function) \
  g_test_add ("/dive-checks/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("one-act", test_one_act);
  ADD ("other-pile", test_other_pile);
  ADD ("dives", test_dives);

  return g_test_run ();
}
