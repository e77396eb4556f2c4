/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/demo-job.h"

#include "book/demo-pier.h"
#include "book/demo-shifts.h"

#include <glib/gstdio.h>

/* At the head of every id of the demo. */
#define TAG "demo"

/* 5 June 2026, 15:00 UTC: the Friday before the first shift. */
#define TAKEN_US (G_GINT64_CONSTANT (1780671600) * G_USEC_PER_SEC)

static gboolean
record_settings (LbBook *book, GError **error)
{
  static const char *const settings[][2] = {
    { "place", "Tern Cove, an invented place" },
    { "datum", "mean lower low water" },
    { "units", "us" },
  };
  LbDraft drafts[G_N_ELEMENTS (settings)];

  for (gsize i = 0; i < G_N_ELEMENTS (settings); i++) {
    drafts[i] = LB_DRAFT_INIT (LB_ENTRY_SETTING);
    drafts[i].what = settings[i][0];
    drafts[i].note = settings[i][1];
    drafts[i].who = "superintendent";
  }

  return lb_book_record (book, drafts, G_N_ELEMENTS (drafts), NULL, error);
}

static gboolean
fill (LbBook *book, GError **error)
{
  g_autoptr (GStringChunk) strings = g_string_chunk_new (4096);
  g_autoptr (GArray) piles = lb_demo_pier_piles (strings);

  if (!record_settings (book, error) ||
      !lb_book_add_piles (book, (const LbPile *) (gconstpointer) piles->data, piles->len, NULL,
                          NULL, NULL, error))
    return FALSE;

  g_autoptr (LbLedger) ledger = lb_book_read (book, NULL, error);

  if (ledger == NULL || !lb_book_begin (book, error))
    return FALSE;
  if (!lb_demo_shifts_record (book, ledger, error)) {
    lb_book_roll_back (book);
    return FALSE;
  }

  return lb_book_commit (book, error);
}

LbBook *
lb_demo_job_create (const char *path, GError **error)
{
  g_return_val_if_fail (path != NULL, NULL);

  g_autoptr (LbBook) book = lb_book_create_fixed (path, LB_DEMO_NAME, TAG, TAKEN_US, error);

  if (book == NULL)
    return NULL;
  if (!fill (book, error)) {
    g_autofree char *made = g_strdup (lb_book_get_path (book));

    g_clear_pointer (&book, lb_book_close);
    g_unlink (made);
    return NULL;
  }

  /* From here on the clock is the real one: what a reader adds happens now. */
  lb_book_set_now (book, 0);
  return g_steal_pointer (&book);
}
