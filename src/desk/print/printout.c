/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Printing goes on while the window is used, and the job may be folded anew between two pages.
 *
 * A card is one page: it is drawn from the fold as it is at that moment, and says what is true
 * then. A day's report breaks over pages, which must not move under the printer: they are drawn
 * at once into recordings when it is laid out, and played back from there.
 */
#include "desk/print/printout.h"

#include "book/day-accounts.h"
#include "desk/shell/preferences.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

struct _LbPrintout
{
  LbJob *job;
  GArray *piles; /* guint; NULL for a day's report */
  guint32 day;
  char *title;
  double width, height;
  GPtrArray *pages; /* recordings of the report */
};

/* Paper is read at arm's length by everybody: large text is the screen's affair. */
static LbVoice
voice_of (const LbPrintout *self)
{
  LbVoice voice = *lb_job_get_voice (self->job);

  voice.scale = 1;
  return voice;
}

LbPrintout *
lb_printout_new_cards (LbJob *job, const guint *piles, gsize n)
{
  const LbFold *fold;
  LbPrintout *self;

  g_return_val_if_fail (LB_IS_JOB (job), NULL);
  g_return_val_if_fail (piles != NULL && n > 0, NULL);

  fold = lb_job_get_fold (job);
  for (gsize i = 0; i < n; i++)
    g_return_val_if_fail (piles[i] < fold->n_piles, NULL);

  self = g_new0 (LbPrintout, 1);
  self->job = g_object_ref (job);
  self->piles = g_array_sized_new (FALSE, FALSE, sizeof (guint), (guint) n);
  g_array_append_vals (self->piles, piles, (guint) n);
  self->title = n == 1
                  /* Translators: of the pile with that mark. */
                  ? g_strdup_printf (_ ("Cut card %s"), fold->piles[piles[0]].mark)
                  : g_strdup_printf (
                      ngettext ("Cut cards of %u pile", "Cut cards of %u piles", (gulong) n),
                      (guint) n);
  return self;
}

LbPrintout *
lb_printout_new_day (LbJob *job, guint32 day)
{
  g_autofree char *date = NULL;
  LbPrintout *self;

  g_return_val_if_fail (LB_IS_JOB (job), NULL);

  date = lb_day_text (day);
  self = g_new0 (LbPrintout, 1);
  self->job = g_object_ref (job);
  self->day = day;
  /* Translators: of that date. */
  self->title = g_strdup_printf (_ ("Daily report %s"), date);
  self->pages = g_ptr_array_new_with_free_func ((GDestroyNotify) cairo_surface_destroy);
  return self;
}

void
lb_printout_free (LbPrintout *self)
{
  if (self == NULL)
    return;
  g_clear_object (&self->job);
  g_clear_pointer (&self->piles, g_array_unref);
  g_clear_pointer (&self->pages, g_ptr_array_unref);
  g_free (self->title);
  g_free (self);
}

const char *
lb_printout_get_title (const LbPrintout *self)
{
  return self->title;
}

char *
lb_printout_dup_file_name (const LbPrintout *self)
{
  /* What one file system or another does not take, or a shell takes for something else. */
  static const char REFUSED[] = "/\\:*?\"<>|";
  char *name = g_strconcat (self->title, ".pdf", NULL);

  return g_strdelimit (name, REFUSED, '-');
}

LbPaper
lb_printout_get_paper (const LbPrintout *self)
{
  GSettings *preferences = lb_preferences ();
  g_autofree char *chosen = NULL;
  LbPaper paper;

  if (preferences != NULL)
    chosen = g_settings_get_string (preferences, "paper");
  if (chosen != NULL && lb_paper_from_name (chosen, &paper))
    return paper;
  return lb_job_get_fold (self->job)->units == LB_UNITS_US ? LB_PAPER_LETTER : LB_PAPER_A4;
}

static void
record_report (LbPrintout *self)
{
  const LbVoice voice = voice_of (self);
  const LbLedger *ledger = lb_job_get_ledger (self->job);
  const LbFold *fold = lb_job_get_fold (self->job);
  const cairo_rectangle_t whole = { 0, 0, self->width, self->height };
  g_autoptr (LbDayAccount) account = lb_day_account_new (ledger, fold, self->day);
  const gsize n = lb_day_report_n_pages (&voice, account, self->width, self->height);

  g_ptr_array_set_size (self->pages, 0);
  for (gsize page = 0; page < n; page++) {
    cairo_surface_t *recording = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &whole);
    cairo_t *cr = cairo_create (recording);

    lb_day_report_draw (cr, &voice, account, page, self->width, self->height);
    cairo_destroy (cr);
    g_ptr_array_add (self->pages, recording);
  }
}

gsize
lb_printout_lay (LbPrintout *self, double width, double height)
{
  g_return_val_if_fail (width > 0 && height > 0, 0);

  self->width = width;
  self->height = height;
  if (self->piles != NULL)
    return self->piles->len;
  record_report (self);
  return self->pages->len;
}

void
lb_printout_draw (LbPrintout *self, cairo_t *cr, gsize page)
{
  g_return_if_fail (self->width > 0);

  if (self->piles != NULL) {
    const LbVoice voice = voice_of (self);
    const LbFold *fold = lb_job_get_fold (self->job);

    g_return_if_fail (page < self->piles->len);
    lb_card_draw (cr, &voice, fold, lb_fold_basis (fold), g_array_index (self->piles, guint, page),
                  self->width, self->height);
    return;
  }

  g_return_if_fail (page < self->pages->len);
  cairo_set_source_surface (cr, g_ptr_array_index (self->pages, page), 0, 0);
  cairo_paint (cr);
}
