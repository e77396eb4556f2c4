/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What goes to paper: as many pages as asked, on the right paper, by the printer's way and by the
 * file's way alike; and pages that stay what they are while the job goes on. */
#include "desk/print/print-operation.h"
#include "desk/print/print.h"
#include "desk/shell/preferences.h"
#include "draw/picture.h"
#include "small-job.h"

#include <adwaita.h>
#include <glib/gstdio.h>

#define DAY 739811u /* 14 July 2026, as in GDate */

typedef struct
{
  char *job_path;
  char *pdf_path; /* in the job's folder, which goes with all that is in it */
  LbJob *job;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autofree char *folder = NULL;

  fixture->job_path = small_job_create ();
  fixture->job = small_job_open (fixture->job_path);
  folder = g_path_get_dirname (fixture->job_path);
  fixture->pdf_path = g_build_filename (folder, "out.pdf", NULL);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_assert_finalize_object (fixture->job);
  small_job_remove (fixture->job_path);
  g_free (fixture->pdf_path);
}

static void
work_a_day (LbJob *job, guint n_notes)
{
  g_autoptr (GError) error = NULL;
  g_autofree LbDraft *drafts = g_new (LbDraft, n_notes);

  g_assert_true (lb_job_open_shift (job, DAY, "day", &error));
  g_assert_no_error (error);
  for (guint i = 0; i < n_notes; i++) {
    drafts[i] = LB_DRAFT_INIT (LB_ENTRY_NOTE);
    drafts[i].note = "The umbilical had to be cleared from the batter pile before the next dive.";
  }
  g_assert_true (lb_job_record (job, drafts, n_notes, &error));
  g_assert_no_error (error);
}

static void
set_units (LbJob *job, const char *units)
{
  g_autoptr (GError) error = NULL;
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_SETTING);

  draft.what = "units";
  draft.note = units;
  g_assert_true (lb_job_record (job, &draft, 1, &error));
  g_assert_no_error (error);
}

static guint
count_in (GBytes *bytes, const char *sought)
{
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);
  const gsize length = strlen (sought);
  guint n = 0;

  for (gsize i = 0; i + length <= size; i++)
    n += memcmp (data + i, sought, length) == 0;
  return n;
}

static GBytes *
read_file (const char *path)
{
  g_autoptr (GError) error = NULL;
  char *data;
  gsize size;

  g_file_get_contents (path, &data, &size, &error);
  g_assert_no_error (error);
  return g_bytes_new_take (data, size);
}

/* Page objects are not compressed in the files cairo writes. */
static guint
count_pages (GBytes *pdf)
{
  return count_in (pdf, "/Type /Page") - count_in (pdf, "/Type /Pages");
}

static void
assert_paper (Fixture *fixture, const char *box)
{
  static const guint PILE = 0;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) pdf = NULL;

  g_assert_true (lb_print_cards_to_file (fixture->job, &PILE, 1, fixture->pdf_path, &error));
  g_assert_no_error (error);
  pdf = read_file (fixture->pdf_path);
  g_assert_cmpuint (count_in (pdf, box), ==, 1);
}

#define LETTER_BOX "/MediaBox [ 0 0 612 792 ]"
#define A4_BOX     "/MediaBox [ 0 0 595.276 841.89 ]"

static void
test_paper (Fixture *fixture, gconstpointer data)
{
  GSettings *preferences = lb_preferences ();

  g_assert_nonnull (preferences);
  assert_paper (fixture, LETTER_BOX);
  set_units (fixture->job, "metric");
  assert_paper (fixture, A4_BOX);

  g_settings_set_string (preferences, "paper", "letter");
  assert_paper (fixture, LETTER_BOX);
  set_units (fixture->job, "us");
  g_settings_set_string (preferences, "paper", "a4");
  assert_paper (fixture, A4_BOX);
  g_settings_reset (preferences, "paper");
}

static void
test_a_card_each (Fixture *fixture, gconstpointer data)
{
  static const guint PILES[] = { 7, 0, 3 };
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) pdf = NULL;

  g_assert_true (
    lb_print_cards_to_file (fixture->job, PILES, G_N_ELEMENTS (PILES), fixture->pdf_path, &error));
  g_assert_no_error (error);
  pdf = read_file (fixture->pdf_path);
  g_assert_cmpuint (count_pages (pdf), ==, G_N_ELEMENTS (PILES));
}

static void
test_long_day (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) one = NULL;
  g_autoptr (GBytes) several = NULL;

  work_a_day (fixture->job, 1);
  g_assert_true (lb_print_day_to_file (fixture->job, DAY, fixture->pdf_path, &error));
  g_assert_no_error (error);
  one = read_file (fixture->pdf_path);
  g_assert_cmpuint (count_pages (one), ==, 1);

  work_a_day (fixture->job, 120);
  g_assert_true (lb_print_day_to_file (fixture->job, DAY, fixture->pdf_path, &error));
  g_assert_no_error (error);
  several = read_file (fixture->pdf_path);
  g_assert_cmpuint (count_pages (several), >, 1);
}

static void
test_no_folder (Fixture *fixture, gconstpointer data)
{
  static const guint PILE = 0;
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (fixture->pdf_path, "card.pdf", NULL);

  g_assert_false (lb_print_cards_to_file (fixture->job, &PILE, 1, path, &error));
  g_assert_error (error, LB_DRAW_ERROR, LB_DRAW_ERROR_WRITE);
  g_assert_nonnull (strstr (error->message, "card.pdf"));
}

static void
test_titles (Fixture *fixture, gconstpointer data)
{
  static const guint PILES[] = { 0, 1 };
  g_autoptr (GError) error = NULL;
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_FACT);
  g_autoptr (LbPrintout) two = lb_printout_new_cards (fixture->job, PILES, 2);
  g_autoptr (LbPrintout) day = lb_printout_new_day (fixture->job, DAY);
  g_autoptr (LbPrintout) one = NULL;
  g_autofree char *name = NULL;

  g_assert_cmpstr (lb_printout_get_title (two), ==, "Cut cards of 2 piles");
  g_assert_nonnull (strstr (lb_printout_get_title (day), "14 Jul 2026"));

  /* A mark may be anything; a file's name may not. */
  draft.pile_id = lb_job_get_fold (fixture->job)->piles[0].id;
  draft.what = "mark";
  draft.note = "12/A: old";
  g_assert_true (lb_job_record (fixture->job, &draft, 1, &error));
  g_assert_no_error (error);
  one = lb_printout_new_cards (fixture->job, PILES, 1);
  name = lb_printout_dup_file_name (one);
  g_assert_cmpstr (lb_printout_get_title (one), ==, "Cut card 12/A: old");
  g_assert_cmpstr (name, ==, "Cut card 12-A- old.pdf");
}

/* A page as pixels. */
static GBytes *
picture_of (LbPrintout *printout, gsize page)
{
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 612, 792);
  cairo_t *cr = cairo_create (image);
  GBytes *bytes;

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  lb_printout_draw (printout, cr, page);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  bytes = g_bytes_new (cairo_image_surface_get_data (image),
                       (gsize) cairo_image_surface_get_stride (image) * 792);
  cairo_surface_destroy (image);
  return bytes;
}

static void
test_report_stands_still (Fixture *fixture, gconstpointer data)
{
  g_autoptr (LbPrintout) printout = NULL;
  g_autoptr (GBytes) before = NULL;
  g_autoptr (GBytes) after = NULL;
  g_autoptr (GBytes) anew = NULL;

  work_a_day (fixture->job, 1);
  printout = lb_printout_new_day (fixture->job, DAY);
  g_assert_cmpuint (lb_printout_lay (printout, 612, 792), ==, 1);
  before = picture_of (printout, 0);
  work_a_day (fixture->job, 120);
  after = picture_of (printout, 0);
  g_assert_true (g_bytes_equal (before, after));

  g_assert_cmpuint (lb_printout_lay (printout, 612, 792), >, 1);
  anew = picture_of (printout, 0);
  g_assert_false (g_bytes_equal (before, anew));
}

static void
test_card_says_what_is_true (Fixture *fixture, gconstpointer data)
{
  static const guint PILE = 0;
  g_autoptr (GError) error = NULL;
  g_autoptr (LbPrintout) printout = lb_printout_new_cards (fixture->job, &PILE, 1);
  g_autoptr (GBytes) before = NULL;
  g_autoptr (GBytes) after = NULL;

  lb_printout_lay (printout, 612, 792);
  before = picture_of (printout, 0);
  g_assert_true (lb_job_burn_bars (fixture->job, PILE, LB_BAR (0), &error));
  g_assert_no_error (error);
  after = picture_of (printout, 0);
  g_assert_false (g_bytes_equal (before, after));
}

typedef struct
{
  GtkPrintOperationResult result;
  gboolean is_done;
} Printing;

static void
done_cb (GtkPrintOperation *operation, GtkPrintOperationResult result, Printing *printing)
{
  printing->result = result;
  printing->is_done = TRUE;
}

/* The whole way through GTK, but for the printer. */
static Printing export(GtkPrintOperation *operation, const char *path)
{
  Printing printing = { .is_done = FALSE };

  g_signal_connect (operation, "done", G_CALLBACK (done_cb), &printing);
  gtk_print_operation_set_export_filename (operation, path);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, NULL);
  small_job_wait (&printing.is_done);
  return printing;
}

static void
test_operation (Fixture *fixture, gconstpointer data)
{
  static const guint PILES[] = { 4, 5 };
  LbPrintout *cards = lb_printout_new_cards (fixture->job, PILES, G_N_ELEMENTS (PILES));
  GtkPrintOperation *operation = lb_print_operation_new (cards);
  g_autofree char *name = NULL;
  g_autoptr (GtkPageSetup) setup = NULL;
  g_autoptr (GBytes) pdf = NULL;
  g_autoptr (GBytes) report = NULL;

  g_object_get (operation, "job-name", &name, "default-page-setup", &setup, NULL);
  g_assert_cmpstr (gtk_paper_size_get_name (gtk_page_setup_get_paper_size (setup)), ==,
                   GTK_PAPER_NAME_LETTER);
  g_clear_object (&setup);
  g_assert_cmpstr (name, ==, "Cut cards of 2 piles");
  g_assert_cmpint (export(operation, fixture->pdf_path).result, ==,
                   GTK_PRINT_OPERATION_RESULT_APPLY);
  pdf = read_file (fixture->pdf_path);
  g_assert_cmpuint (count_pages (pdf), ==, G_N_ELEMENTS (PILES));
  g_assert_finalize_object (operation);

  work_a_day (fixture->job, 120);
  operation = lb_print_operation_new (lb_printout_new_day (fixture->job, DAY));
  g_assert_cmpint (export(operation, fixture->pdf_path).result, ==,
                   GTK_PRINT_OPERATION_RESULT_APPLY);
  report = read_file (fixture->pdf_path);
  g_assert_cmpuint (count_pages (report), >, 1);
  g_assert_finalize_object (operation);
}

static void
test_operation_fails (Fixture *fixture, gconstpointer data)
{
  static const guint PILE = 0;
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (fixture->pdf_path, "card.pdf", NULL);
  GtkPrintOperation *operation = lb_print_operation_new (
    lb_printout_new_cards (fixture->job, &PILE, 1));

  g_assert_cmpint (export(operation, path).result, ==, GTK_PRINT_OPERATION_RESULT_ERROR);
  gtk_print_operation_get_error (operation, &error);
  g_assert_nonnull (error);
  g_assert_finalize_object (operation);
}

int
main (int argc, char **argv)
{
  g_autofree char *schemas = g_build_filename (g_getenv ("LB_BUILD_DIR"), "data", NULL);

  g_setenv ("GSETTINGS_SCHEMA_DIR", schemas, TRUE);
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();

#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  ADD ("/print/paper", test_paper);
  ADD ("/print/a-card-each", test_a_card_each);
  ADD ("/print/long-day", test_long_day);
  ADD ("/print/no-folder", test_no_folder);
  ADD ("/print/titles", test_titles);
  ADD ("/print/report-stands-still", test_report_stands_still);
  ADD ("/print/card-says-what-is-true", test_card_says_what_is_true);
  ADD ("/print/operation", test_operation);
  ADD ("/print/operation-fails", test_operation_fails);

  return g_test_run ();
}
