/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/recover.h"

#include <glib/gi18n-lib.h>

gboolean
lb_recovery_is_whole (const LbRecovery *recovery)
{
  g_return_val_if_fail (recovery != NULL, FALSE);

  return recovery->n_lost_piles == 0 && recovery->n_lost_shifts == 0 &&
         recovery->n_lost_entries == 0 && recovery->n_orphans == 0 && recovery->n_torn == 0 &&
         recovery->n_open_acts == 0 && recovery->n_unread_bytes == 0 && !recovery->is_other_job;
}

static void add_line (GString *text, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
add_line (GString *text, const char *format, ...)
{
  va_list arguments;

  if (text->len > 0)
    g_string_append_c (text, '\n');
  va_start (arguments, format);
  g_string_append_vprintf (text, format, arguments);
  va_end (arguments);
}

/* "3 piles, 1 shift, 200 entries" */
static char *
counts (guint n_piles, guint n_shifts, guint n_entries)
{
  g_autofree char *piles = g_strdup_printf (ngettext ("%u pile", "%u piles", n_piles), n_piles);
  g_autofree char *shifts = g_strdup_printf (ngettext ("%u shift", "%u shifts", n_shifts),
                                             n_shifts);
  g_autofree char *entries = g_strdup_printf (ngettext ("%u entry", "%u entries", n_entries),
                                              n_entries);

  /* Translators: so many piles, shifts, entries. */
  return g_strdup_printf (_ ("%s, %s, %s"), piles, shifts, entries);
}

static void
add_lost (GString *text, const LbRecovery *recovery)
{
  g_autofree char *lost = counts (recovery->n_lost_piles, recovery->n_lost_shifts,
                                  recovery->n_lost_entries);
  const guint n_read = recovery->n_orphans + recovery->n_torn;

  add_line (text, _ ("Lost, at least: %s."), lost);
  if (n_read > 0)
    add_line (text,
              ngettext ("%u of these entries could be read, but what it is about or was stored "
                        "with is lost.",
                        "%u of these entries could be read, but what they are about or were "
                        "stored with is lost.",
                        n_read),
              n_read);
  if (recovery->n_open_acts > 0)
    add_line (text,
              ngettext ("%u act was kept right before such a gap and may lack its end.",
                        "%u acts were kept right before such a gap and may lack their end.",
                        recovery->n_open_acts),
              recovery->n_open_acts);
  if (recovery->n_unread_bytes > 0) {
    g_autofree char *size = g_format_size (recovery->n_unread_bytes);

    add_line (text,
              _ ("%s of the old file could not be read or are missing at its end, where the "
                 "newest entries stood."),
              size);
  }
}

char *
lb_recovery_to_text (const LbRecovery *recovery)
{
  g_return_val_if_fail (recovery != NULL, NULL);

  g_autofree char *kept = counts (recovery->n_piles, recovery->n_shifts, recovery->n_entries);
  const gboolean is_whole = lb_recovery_is_whole (recovery);
  GString *text = g_string_new (NULL);

  add_line (text, _ ("Kept: %s."), kept);
  if (is_whole)
    add_line (text, _ ("Nothing is known to be lost; look through the last shift all the same."));
  else
    add_lost (text, recovery);
  if (recovery->is_other_job)
    add_line (text, _ ("What the job is called among files was lost too: the new file counts as "
                       "another job, and nothing of the old one can be joined with it."));
  if (recovery->n_seals > 0 && !is_whole)
    add_line (text, _ ("Signatures were kept as they are. One whose shift lost entries no longer "
                       "proves; checking the new file tells which."));
  add_line (text, _ ("The old file was not changed; keep it."));
  return g_string_free (text, FALSE);
}
