/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The demo job is what people first meet: it has to be as varied as it is said to be, and nobody in
 * it may do what the program warns of. */
#include "book/demo-job.h"
#include "book/dive-record.h"
#include "book/finding.h"
#include "book/fold.h"
#include "book/stock.h"
#include "trade/bottom-time.h"
#include "trade/cut-plan.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define FOOT 0.3048

typedef struct
{
  char *folder, *path;
  LbBook *book;
  LbLedger *ledger;
  LbFold *fold;
} Demo;

static void
set_up (Demo *demo, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  demo->folder = g_dir_make_tmp ("lastbent-demo-XXXXXX", &error);
  g_assert_no_error (error);
  demo->path = g_build_filename (demo->folder, "demo" LB_BOOK_SUFFIX, NULL);
  demo->book = lb_demo_job_create (demo->path, &error);
  g_assert_no_error (error);
  demo->ledger = lb_book_read (demo->book, NULL, &error);
  g_assert_no_error (error);
  demo->fold = lb_fold_new (demo->ledger, G_MAXINT64);
}

static void
tear_down (Demo *demo, gconstpointer data)
{
  g_clear_pointer (&demo->fold, lb_fold_free);
  g_clear_pointer (&demo->ledger, lb_ledger_free);
  g_clear_pointer (&demo->book, lb_book_close);
  g_assert_cmpint (g_unlink (demo->path), ==, 0);
  g_assert_cmpint (g_rmdir (demo->folder), ==, 0);
  g_clear_pointer (&demo->path, g_free);
  g_clear_pointer (&demo->folder, g_free);
}

static void
test_pier (Demo *demo, gconstpointer data)
{
  g_autoptr (GHashTable) kinds = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  guint sides = 0, n_strand = 0;

  g_assert_cmpuint (demo->fold->n_piles, >=, 180);
  g_assert_cmpint (lb_fold_find_mark (demo->fold, "G7"), >=, 0);
  for (guint i = 0; i < demo->fold->n_piles; i++) {
    const LbPile *pile = lb_ledger_pile (demo->ledger, i);
    g_autoptr (GError) error = NULL;
    LbCutPlan plan;

    g_test_message ("%s", pile->mark);
    lb_pile_check (pile, &error);
    g_assert_no_error (error);
    g_hash_table_add (kinds, g_strdup_printf ("%d %.3f %s", (int) pile->outline.shape,
                                              pile->outline.width_m, pile->bar->name));
    n_strand += pile->bar->kind == LB_BAR_STRAND ? 1 : 0;
    lb_cut_plan_reckon (pile, 0, 0, 0, lb_fold_basis (demo->fold), &plan);
    g_assert_cmpfloat (plan.figures[LB_FIGURE_CUT_DEPTH].range.likely, >=, 23.5 * FOOT);
    g_assert_cmpfloat (plan.figures[LB_FIGURE_CUT_DEPTH].range.likely, <=, 41.5 * FOOT);
    if (pile->batter > 0) {
      g_assert_cmpfloat (pile->batter, >=, 1.0 / 12);
      g_assert_cmpfloat (pile->batter, <=, 1.0 / 4);
      sides |= 1u << lb_compass_nearest (pile->bearing_rad);
    }
  }
  g_assert_cmpuint (g_hash_table_size (kinds), >=, 4);
  g_assert_cmpuint (n_strand, >=, 1);
  /* Piles lean every way of the compass. */
  g_assert_cmphex (sides, ==, 0xff);
}

static void
test_history (Demo *demo, gconstpointer data)
{
  guint n_of_kind[LB_N_ENTRY_KINDS] = { 0 }, n_stubs = 0, n_idle = 0;
  guint early = 0, late = 0;

  g_assert_cmpuint (demo->ledger->shifts->len, ==, 30);
  for (guint i = 0; i < demo->ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (demo->ledger, i);

    n_of_kind[entry->kind]++;
    g_assert_true (strstr (entry->what, "diver") == NULL || entry->kind == LB_ENTRY_DIVE ||
                   entry->kind == LB_ENTRY_CREW);
  }
  for (LbEntryKind kind = 0; kind < LB_N_ENTRY_KINDS; kind++) {
    if (kind != LB_ENTRY_FACT && kind != LB_ENTRY_GONE && kind != LB_ENTRY_SET_ASIDE &&
        kind != LB_ENTRY_TAKE_IN && (kind < LB_ENTRY_ANSWER || kind > LB_ENTRY_SEAL))
      g_assert_cmpuint (n_of_kind[kind], >, 0);
  }
  for (LbStep step = 0; step < LB_N_STEPS; step++)
    g_assert_cmpuint (demo->fold->n_by_step[step], >, 0);
  for (guint i = 0; i < demo->fold->n_piles; i++) {
    n_stubs += (demo->fold->states[i].flags & LB_FLAG_STUB_LEFT) != 0 ? 1 : 0;
    g_assert_cmpuint (demo->fold->states[i].flags & ~(guint) LB_FLAG_STUB_LEFT, ==, 0);
  }
  g_assert_cmpuint (n_stubs, ==, 1);

  /* The crew learns, and weather stops it now and then. */
  for (gsize day = 0; day < demo->fold->n_days; day++) {
    const guint bars = demo->fold->days[day].totals.bars;

    n_idle += bars == 0 ? 1 : 0;
    early += day < 10 ? bars : 0;
    late += day >= 20 ? bars : 0;
  }
  g_assert_cmpuint (n_idle, >=, 2);
  g_assert_cmpuint (late, >, early * 3 / 2);
}

/* Every dive's record is whole, but for the last shift's thermometer; the counts of what is aboard are
 * near what the record says is left. */
static void
test_sheet (Demo *demo, gconstpointer data)
{
  const char *const whats[] = { LB_STOCK_RODS, LB_STOCK_CYLINDERS };
  const int last = (int) demo->ledger->shifts->len - 1;

  for (int shift = 0; shift <= last; shift++) {
    g_autoptr (GArray) gaps = lb_dive_record_gaps (demo->ledger, demo->fold, shift);

    g_assert_cmpuint (gaps->len, ==, shift == last ? 1 : 0);
    if (gaps->len > 0)
      g_assert_cmpint (g_array_index (gaps, LbRecordGap, 0).kind, ==, LB_GAP_WATER_TEMPERATURE);
    for (gsize i = 0; i < G_N_ELEMENTS (whats); i++) {
      LbStock stock;

      lb_stock_at (demo->ledger, demo->fold, whats[i], shift, &stock);
      g_assert_cmpint (stock.counted_shift, >=, shift - 3);
      g_assert_cmpfloat (stock.left, >=, 0);
    }
  }
}

static void
test_dives_are_within_limits (Demo *demo, gconstpointer data)
{
  guint n_dives = 0;

  for (guint i = 0; i < demo->ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (demo->ledger, i);
    double table_depth_m;
    LbNoStop no_stop;

    if (entry->kind != LB_ENTRY_DIVE)
      continue;
    n_dives++;
    g_assert_true (lb_pneumo_corrected (entry->amount, &table_depth_m, NULL));
    g_assert_true (lb_no_stop_limit (table_depth_m, &no_stop, NULL));
    g_assert_cmpfloat ((double) (entry->end_us - entry->start_us) / G_USEC_PER_SEC, <,
                       no_stop.limit_s);
    /* Up no faster than the table's 30 ft a minute. */
    g_assert_cmpfloat ((double) (entry->up_us - entry->end_us) / G_USEC_PER_SEC, >=,
                       lb_ascent_time (entry->amount) - 1);
  }
  g_assert_cmpuint (n_dives, >, 40);
}

/* No leaning pile is cut through before it hangs on the hook. */
static void
test_leaning_piles_are_rigged_first (Demo *demo, gconstpointer data)
{
  g_autofree gboolean *is_rigged = g_new0 (gboolean, demo->fold->n_piles);
  guint n_severed = 0;

  for (guint i = 0; i < demo->ledger->entries->len; i++) {
    const LbEntry *entry = lb_ledger_entry (demo->ledger, i);

    if (!demo->fold->is_alive[i] || entry->kind != LB_ENTRY_STEP)
      continue;
    if (strcmp (entry->what, lb_step_name (LB_STEP_RIGGED)) == 0)
      is_rigged[entry->pile] = TRUE;
    if (strcmp (entry->what, lb_step_name (LB_STEP_SEVERED)) == 0 &&
        lb_ledger_pile (demo->ledger, (guint) entry->pile)->batter > 0)
    {
      g_assert_true (is_rigged[entry->pile]);
      n_severed++;
    }
  }
  g_assert_cmpuint (n_severed, >, 10);
}

static void
test_same_everywhere (Demo *demo, gconstpointer data)
{
  g_autofree char *path = g_build_filename (demo->folder, "twin" LB_BOOK_SUFFIX, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (LbBook) book = lb_demo_job_create (path, &error);

  g_assert_no_error (error);
  g_autoptr (LbLedger) twin = lb_book_read (book, NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (twin->entries->len, ==, demo->ledger->entries->len);
  g_assert_cmpstr (twin->job_id, ==, demo->ledger->job_id);
  for (guint i = 0; i < twin->entries->len; i++) {
    const LbEntry *one = lb_ledger_entry (demo->ledger, i), *other = lb_ledger_entry (twin, i);

    g_assert_cmpstr (one->id, ==, other->id);
    g_assert_cmpint (one->at_us, ==, other->at_us);
    g_assert_cmpuint (one->bars, ==, other->bars);
    g_assert_cmpstr (one->note, ==, other->note);
  }
  g_assert_cmpint (g_unlink (path), ==, 0);
}

static void
test_existing_file (Demo *demo, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (lb_demo_job_create (demo->path, &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  g_assert_null (lb_demo_job_create ("/nowhere/demo.lastbent", &error));
  g_assert_nonnull (error);
  g_assert_true (g_file_test (demo->path, G_FILE_TEST_EXISTS));
}

/* A stub left part burned without the hook is answered at the end of its shift; the last shift's are
 * for the reader to answer. */
static void
test_findings (Demo *demo, gconstpointer data)
{
  const int last = (int) demo->ledger->shifts->len - 1;
  g_autoptr (GArray) findings = lb_findings_new (demo->ledger, demo->fold);
  guint n_answered = 0, n_open = 0;

  for (guint i = 0; i < findings->len; i++) {
    const LbFinding *finding = &g_array_index (findings, LbFinding, i);

    if (finding->kind != LB_FINDING_NOT_RIGGED)
      continue;
    g_assert_true ((finding->answer == NULL) == (finding->shift == last));
    n_answered += finding->answer != NULL ? 1 : 0;
    n_open += finding->answer == NULL ? 1 : 0;
  }
  g_assert_cmpuint (n_answered, >, 3);
  g_assert_cmpuint (n_open, >, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(path, function) g_test_add (path, Demo, NULL, set_up, function, tear_down)
  ADD ("/demo-job/pier", test_pier);
  ADD ("/demo-job/history", test_history);
  ADD ("/demo-job/sheet", test_sheet);
  ADD ("/demo-job/dives-are-within-limits", test_dives_are_within_limits);
  ADD ("/demo-job/leaning-piles-are-rigged-first", test_leaning_piles_are_rigged_first);
  ADD ("/demo-job/findings", test_findings);
  ADD ("/demo-job/same-everywhere", test_same_everywhere);
  ADD ("/demo-job/existing-file", test_existing_file);
#undef ADD

  return g_test_run ();
}
