/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The open job: what it records is on the disk, what others record arrives, and take back and redo
 * go through both what belongs to a shift and what does not. */
#include "desk/shell/demo-file.h"
#include "small-job.h"

static int
pile_called (LbJob *job, const char *mark)
{
  const int pile = lb_fold_find_mark (lb_job_get_fold (job), mark);

  g_assert_cmpint (pile, >=, 0);
  return pile;
}

static const LbPileState *
state_of (LbJob *job, const char *mark)
{
  return &lb_job_get_fold (job)->states[pile_called (job, mark)];
}

/* What a program that reads the file now would see. */
static guint
count_on_disk (const char *path, LbEntryKind kind)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_book_open (path, LB_BOOK_READ, &error);
  g_autoptr (LbLedger) ledger = NULL;
  guint n = 0;

  g_assert_no_error (error);
  ledger = lb_book_read (book, NULL, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < ledger->entries->len; i++)
    n += lb_ledger_entry (ledger, i)->kind == kind;
  return n;
}

static void
count_cb (LbJob *job, guint *n)
{
  (*n)++;
}

static void
test_records_at_once (void)
{
  g_autoptr (GError) error = NULL;
  char *path = small_job_create ();
  g_autoptr (LbJob) job = small_job_open (path);
  guint n_changed = 0;

  g_signal_connect (job, "changed", G_CALLBACK (count_cb), &n_changed);
  g_assert_cmpint (lb_job_get_shift (job), ==, -1);
  g_assert_true (lb_job_burn_bars (job, (guint) pile_called (job, "B2"), LB_BAR (0), &error));
  g_assert_no_error (error);
  g_assert_cmpuint (n_changed, ==, 1);
  g_assert_cmpint (lb_job_get_shift (job), ==, 0);
  g_assert_cmpuint (state_of (job, "B2")->n_left, ==, 7);
  g_assert_cmpuint (count_on_disk (path, LB_ENTRY_BARS), ==, 1);

  /* Burned bars do not burn again. */
  g_assert_true (lb_job_burn_bars (job, (guint) pile_called (job, "B2"), LB_BAR (0), &error));
  g_assert_cmpuint (n_changed, ==, 1);
  g_assert_cmpuint (count_on_disk (path, LB_ENTRY_BARS), ==, 1);
  g_clear_object (&job);
  small_job_remove (path);
}

static void
test_last_bar_severs (void)
{
  g_autoptr (GError) error = NULL;
  char *path = small_job_create ();
  g_autoptr (LbJob) job = small_job_open (path);
  const guint pile = (guint) pile_called (job, "A1");

  g_assert_true (lb_job_burn_bars (job, pile, lb_bar_set_all (7), &error));
  g_assert_cmpint (state_of (job, "A1")->step, ==, LB_STEP_STANDING);
  g_assert_true (lb_job_burn_bars (job, pile, LB_BAR (7), &error));
  g_assert_cmpint (state_of (job, "A1")->step, ==, LB_STEP_SEVERED);
  g_assert_cmpuint (state_of (job, "A1")->n_left, ==, 0);

  /* Both were one act. */
  g_assert_true (lb_job_take_back (job, &error));
  g_assert_cmpint (state_of (job, "A1")->step, ==, LB_STEP_STANDING);
  g_assert_cmpuint (state_of (job, "A1")->n_left, ==, 1);
  g_clear_object (&job);
  small_job_remove (path);
}

static void
test_marks_many_as_one_act (void)
{
  g_autoptr (GError) error = NULL;
  char *path = small_job_create ();
  g_autoptr (LbJob) job = small_job_open (path);
  const guint piles[] = { 0, 3, 5 };

  g_assert_true (lb_job_mark_step (job, piles, G_N_ELEMENTS (piles), LB_STEP_SEVERED, &error));
  g_assert_cmpuint (lb_job_get_fold (job)->n_by_step[LB_STEP_SEVERED], ==, 3);
  g_assert_cmpuint (lb_job_get_fold (job)->job.bars, ==, 24);
  for (gsize i = 0; i < G_N_ELEMENTS (piles); i++)
    g_assert_cmpuint (lb_job_get_fold (job)->states[piles[i]].flags, ==, 0);

  /* Marking again what is marked stores nothing. */
  g_assert_true (lb_job_mark_step (job, piles, 1, LB_STEP_SEVERED, &error));
  g_assert_cmpuint (count_on_disk (path, LB_ENTRY_STEP), ==, 3);

  g_assert_true (lb_job_take_back (job, &error));
  g_assert_cmpuint (lb_job_get_fold (job)->n_by_step[LB_STEP_SEVERED], ==, 0);
  g_assert_false (lb_job_can_take_back (job));
  g_assert_true (lb_job_redo (job, &error));
  g_assert_cmpuint (lb_job_get_fold (job)->n_by_step[LB_STEP_SEVERED], ==, 3);
  g_assert_false (lb_job_can_redo (job));
  g_clear_object (&job);
  small_job_remove (path);
}

static void
set_units (LbJob *job, const char *units)
{
  g_autoptr (GError) error = NULL;
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);

  draft.what = "units";
  draft.note = units;
  lb_job_record (job, &draft, 1, &error);
  g_assert_no_error (error);
}

static void
test_take_back_counts_settings_in (void)
{
  g_autoptr (GError) error = NULL;
  char *path = small_job_create ();
  g_autoptr (LbJob) job = small_job_open (path);
  const guint pile = 0;

  g_assert_false (lb_job_can_take_back (job));
  g_assert_false (lb_job_take_back (job, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_clear_error (&error);

  lb_job_mark_step (job, &pile, 1, LB_STEP_CLEANED, &error);
  set_units (job, "metric");
  g_assert_cmpint (lb_job_get_voice (job)->units, ==, LB_UNITS_METRIC);

  /* The setting was last, so it goes first, then the step; redo comes back the other way round. */
  g_assert_true (lb_job_take_back (job, &error));
  g_assert_cmpint (lb_job_get_voice (job)->units, ==, LB_UNITS_US);
  g_assert_cmpint (lb_job_get_fold (job)->states[0].step, ==, LB_STEP_CLEANED);
  g_assert_true (lb_job_take_back (job, &error));
  g_assert_cmpint (lb_job_get_fold (job)->states[0].step, ==, LB_STEP_STANDING);

  /* Something new, of either kind, ends redo. */
  g_assert_true (lb_job_can_redo (job));
  set_units (job, "metric");
  g_assert_false (lb_job_can_redo (job));

  /* What was set before the file was opened is not taken back by a key. */
  g_clear_object (&job);
  job = small_job_open (path);
  g_assert_false (lb_job_can_take_back (job));
  g_clear_object (&job);
  small_job_remove (path);
}

static void
flag_cb (LbJob *job, gboolean *flag)
{
  *flag = TRUE;
}

static void
test_two_follow_each_other (void)
{
  g_autoptr (GError) error = NULL;
  char *path = small_job_create ();
  g_autoptr (LbJob) one = small_job_open (path);
  g_autoptr (LbJob) other = small_job_open (path);
  const guint pile = 4;
  gboolean has_changed = FALSE;

  g_signal_connect (other, "changed", G_CALLBACK (flag_cb), &has_changed);
  lb_job_mark_step (one, &pile, 1, LB_STEP_RIGGED, &error);
  g_assert_no_error (error);
  small_job_wait (&has_changed);
  g_assert_cmpint (lb_job_get_fold (other)->states[pile].step, ==, LB_STEP_RIGGED);
  g_clear_object (&one);
  g_clear_object (&other);
  small_job_remove (path);
}

typedef struct
{
  gboolean is_done;
  GError *error;
  guint n_told;
} Outcome;

static void
told_cb (gsize done, gsize total, gpointer data)
{
  g_assert_cmpuint (done, <=, total);
  ((Outcome *) data)->n_told++;
}

static void
added_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Outcome *outcome = data;

  lb_job_add_piles_finish (LB_JOB (source), result, &outcome->error);
  outcome->is_done = TRUE;
}

static LbPile *
more_piles (gsize n, GStringChunk *strings)
{
  LbPile *piles = g_new (LbPile, n);

  for (gsize i = 0; i < n; i++) {
    g_autofree char *mark = g_strdup_printf ("X%" G_GSIZE_FORMAT, i);

    lb_pile_init (&piles[i]);
    piles[i].mark = g_string_chunk_insert (strings, mark);
    piles[i].x_m = (double) i;
    piles[i].y_m = 40;
  }
  return piles;
}

static void
test_adds_piles_on_a_worker (void)
{
  char *path = small_job_create ();
  g_autoptr (LbJob) job = small_job_open (path);
  GStringChunk *strings = g_string_chunk_new (4096);
  g_autofree LbPile *piles = more_piles (5000, strings);
  g_autoptr (GCancellable) cancelled = g_cancellable_new ();
  Outcome outcome = { .error = NULL };

  lb_job_add_piles_async (job, piles, 5000, strings, (GDestroyNotify) g_string_chunk_free, told_cb,
                          &outcome, NULL, added_cb, &outcome);
  small_job_wait (&outcome.is_done);
  g_assert_no_error (outcome.error);
  g_assert_cmpuint (lb_job_get_fold (job)->n_piles, ==, SMALL_JOB_BENTS * SMALL_JOB_ROWS + 5000);

  /* The same mark again is refused. The strings went with the first lot. */
  outcome = (Outcome){ .error = NULL };
  piles[0].mark = "X0";
  lb_job_add_piles_async (job, piles, 1, NULL, NULL, NULL, NULL, NULL, added_cb, &outcome);
  small_job_wait (&outcome.is_done);
  g_assert_error (outcome.error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_clear_error (&outcome.error);

  outcome = (Outcome){ .error = NULL };
  g_cancellable_cancel (cancelled);
  piles[0].mark = "Y";
  lb_job_add_piles_async (job, piles, 1, NULL, NULL, NULL, NULL, cancelled, added_cb, &outcome);
  small_job_wait (&outcome.is_done);
  g_assert_error (outcome.error, LB_BOOK_ERROR, LB_BOOK_ERROR_CANCELLED);
  g_clear_error (&outcome.error);
  g_assert_cmpint (lb_fold_find_mark (lb_job_get_fold (job), "Y"), ==, -1);
  g_clear_object (&job);
  small_job_remove (path);
}

static void
copied_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Outcome *outcome = data;

  lb_job_copy_finish (LB_JOB (source), result, &outcome->error);
  outcome->is_done = TRUE;
}

static void
copy_to (LbJob *job, const char *path, Outcome *outcome)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);

  *outcome = (Outcome){ .error = NULL };
  lb_job_copy_async (job, file, NULL, copied_cb, outcome);
  small_job_wait (&outcome->is_done);
}

static void
test_copies (void)
{
  g_autoptr (GError) error = NULL;
  char *path = small_job_create ();
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *copy = g_build_filename (folder, "copy.lastbent", NULL);
  g_autoptr (LbJob) job = small_job_open (path);
  g_autoptr (LbJob) copied = NULL;
  Outcome outcome;

  /* It takes another file's place, and never the job's own. */
  g_file_set_contents (copy, "something else", -1, &error);
  g_assert_no_error (error);
  copy_to (job, copy, &outcome);
  g_assert_no_error (outcome.error);
  copied = small_job_open (copy);
  g_assert_cmpuint (lb_job_get_fold (copied)->n_piles, ==, SMALL_JOB_BENTS * SMALL_JOB_ROWS);
  copy_to (job, path, &outcome);
  g_assert_error (outcome.error, LB_BOOK_ERROR, LB_BOOK_ERROR_REFUSED);
  g_clear_error (&outcome.error);
  g_clear_object (&job);
  g_clear_object (&copied);
  small_job_remove (path);
}

static void
refused_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Outcome *outcome = data;

  g_assert_null (lb_job_open_finish (result, &outcome->error));
  outcome->is_done = TRUE;
}

static void
test_refuses_what_is_no_job (void)
{
  char *path = small_job_create ();
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *foreign = g_build_filename (folder, "list.csv", NULL);
  g_autofree char *missing = g_build_filename (folder, "missing.lastbent", NULL);
  g_autoptr (GFile) foreign_file = g_file_new_for_path (foreign);
  g_autoptr (GFile) missing_file = g_file_new_for_path (missing);
  Outcome outcome = { .error = NULL };

  g_file_set_contents (foreign, "mark,x,y\nA1,0,0\n", -1, NULL);
  lb_job_open_async (foreign_file, NULL, refused_cb, &outcome);
  small_job_wait (&outcome.is_done);
  g_assert_error (outcome.error, LB_BOOK_ERROR, LB_BOOK_ERROR_FOREIGN);
  g_clear_error (&outcome.error);

  outcome = (Outcome){ .error = NULL };
  lb_job_open_async (missing_file, NULL, refused_cb, &outcome);
  small_job_wait (&outcome.is_done);
  g_assert_error (outcome.error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN);
  g_clear_error (&outcome.error);
  g_assert_false (g_file_test (missing, G_FILE_TEST_EXISTS));
  small_job_remove (path);
}

/* The demo is kept and opened again; one that is spoilt is left alone and a second one made. */
static void
test_demo_beside_a_spoilt_one (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("lastbent-XXXXXX", &error);
  g_autofree char *kept = g_build_filename (folder, "tern-cove-demo.lastbent", NULL);
  g_autofree char *second = g_build_filename (folder, "tern-cove-demo-2.lastbent", NULL);
  g_autofree char *spoilt = NULL;
  gboolean is_second = TRUE;

  for (int i = 0; i < 2; i++) {
    g_autoptr (GFile) file = lb_demo_file_ready (folder, &is_second, &error);

    g_assert_no_error (error);
    g_assert_cmpstr (g_file_peek_path (file), ==, kept);
    g_assert_false (is_second);
  }

  g_file_set_contents (kept, "no job any more", -1, &error);
  g_assert_no_error (error);
  for (int i = 0; i < 2; i++) {
    g_autoptr (GFile) file = lb_demo_file_ready (folder, &is_second, &error);

    g_assert_no_error (error);
    g_assert_cmpstr (g_file_peek_path (file), ==, second);
    g_assert_true (is_second == (i == 0));
  }
  g_file_get_contents (kept, &spoilt, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (spoilt, ==, "no job any more");
  small_job_remove (g_steal_pointer (&kept));
}

static void
test_read_only (void)
{
  g_autoptr (GError) error = NULL;
  char *path = small_job_create ();
  g_autoptr (LbJob) job = small_job_open_read_only (path);
  const guint pile = 0;

  g_assert_false (lb_job_mark_step (job, &pile, 1, LB_STEP_CLEANED, &error));
  g_assert_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_READ_ONLY);
  g_clear_object (&job);
  small_job_remove (path);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/job/records-at-once", test_records_at_once);
  g_test_add_func ("/job/last-bar-severs", test_last_bar_severs);
  g_test_add_func ("/job/marks-many-as-one-act", test_marks_many_as_one_act);
  g_test_add_func ("/job/take-back-counts-settings-in", test_take_back_counts_settings_in);
  g_test_add_func ("/job/two-follow-each-other", test_two_follow_each_other);
  g_test_add_func ("/job/adds-piles-on-a-worker", test_adds_piles_on_a_worker);
  g_test_add_func ("/job/copies", test_copies);
  g_test_add_func ("/job/refuses-what-is-no-job", test_refuses_what_is_no_job);
  g_test_add_func ("/job/demo-beside-a-spoilt-one", test_demo_beside_a_spoilt_one);
  g_test_add_func ("/job/read-only", test_read_only);

  return g_test_run ();
}
