/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The copies that are kept of a job without anybody's doing.
 *
 * A folder a file, called after the file and its place: "tern-cove-1f0c…": the beginning of the
 * name, for people, and of a SHA-256 of the whole path, so that the copies are found again by the
 * path alone, when the file itself can no longer be read. In it a copy a moment:
 * "20260714T063000Z.lastbent", ISO 8601 in UTC, so that names sort by time.
 *
 * Invariants:
 *   1. A copy is made as any other (copy.c): whole, or not there.
 *   2. A new copy is later than all before it, whatever the clock says, so that it is never the one
 *      that is removed.
 *   3. Only what bears such a name is ever removed, and only after a new copy stands.
 * Whether there is anything new to copy is told by the numbers and ids of the last rows: a job only
 * grows. */
#include "book/backup.h"

#include "book/book-private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

/* Of the hash: 64 bits, beyond chance for the files of one user. */
#define HASH_DIGITS 16

/* Of the file's name; more would only make long paths. */
#define STEM_BYTES 40

/* How long a half-made copy is left alone: nobody takes an hour over one. */
#define LITTER_S 3600

/* "20260714T063000Z" */
#define MOMENT_LENGTH 16

void
lb_backup_free (LbBackup *backup)
{
  if (backup == NULL)
    return;
  g_free (backup->path);
  g_free (backup);
}

char *
lb_backup_folder (void)
{
  return g_build_filename (g_get_user_data_dir (), "lastbent", "copies", NULL);
}

/* The folder of one file's copies. */
static char *
folder_of (const char *folder, const char *job_path)
{
  g_autofree char *full = g_canonicalize_filename (job_path, NULL);
  g_autofree char *hash = g_compute_checksum_for_string (G_CHECKSUM_SHA256, full, -1);
  g_autofree char *base = g_path_get_basename (full);
  g_autofree char *stem = NULL;
  g_autofree char *name = NULL;

  if (g_str_has_suffix (base, LB_BOOK_SUFFIX))
    base[strlen (base) - strlen (LB_BOOK_SUFFIX)] = '\0';
  stem = g_strndup (base, STEM_BYTES);
  g_strcanon (stem, G_CSET_a_2_z G_CSET_A_2_Z G_CSET_DIGITS "-_", '-');
  name = g_strdup_printf ("%s-%.*s", stem, HASH_DIGITS, hash);
  return g_build_filename (folder, name, NULL);
}

static char *
name_of_moment (gint64 us)
{
  g_autoptr (GDateTime) moment = g_date_time_new_from_unix_utc (us / G_USEC_PER_SEC);

  return moment != NULL ? g_date_time_format (moment, "%Y%m%dT%H%M%SZ" LB_BOOK_SUFFIX) : NULL;
}

/* Whether @name is that of a copy, and of which moment. */
static gboolean
moment_from_name (const char *name, gint64 *out_us)
{
  g_autofree char *text = NULL;
  g_autoptr (GDateTime) moment = NULL;

  if (strlen (name) != MOMENT_LENGTH + strlen (LB_BOOK_SUFFIX) ||
      !g_str_has_suffix (name, LB_BOOK_SUFFIX))
    return FALSE;
  text = g_strndup (name, MOMENT_LENGTH);
  moment = g_date_time_new_from_iso8601 (text, NULL);
  if (moment == NULL)
    return FALSE;
  *out_us = g_date_time_to_unix (moment) * G_USEC_PER_SEC;
  return TRUE;
}

static int
compare_newest_first (gconstpointer a, gconstpointer b)
{
  const LbBackup *one = *(LbBackup *const *) a;
  const LbBackup *other = *(LbBackup *const *) b;

  return one->made_us == other->made_us ? 0 : one->made_us > other->made_us ? -1 : 1;
}

static GPtrArray *
list_folder (const char *own_folder)
{
  GPtrArray *backups = g_ptr_array_new_with_free_func ((GDestroyNotify) lb_backup_free);
  g_autoptr (GDir) dir = g_dir_open (own_folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    gint64 made_us;
    GStatBuf facts;

    if (!moment_from_name (name, &made_us))
      continue;
    LbBackup *backup = g_new0 (LbBackup, 1);
    backup->path = g_build_filename (own_folder, name, NULL);
    backup->made_us = made_us;
    backup->size = g_stat (backup->path, &facts) == 0 ? facts.st_size : 0;
    g_ptr_array_add (backups, backup);
  }
  g_ptr_array_sort (backups, compare_newest_first);
  return backups;
}

GPtrArray *
lb_backup_list (const char *folder, const char *job_path)
{
  g_return_val_if_fail (folder != NULL, NULL);
  g_return_val_if_fail (job_path != NULL, NULL);

  g_autofree char *own_folder = folder_of (folder, job_path);
  return list_folder (own_folder);
}

/* A copy that cannot be opened is no copy: then another one is made. */
static gboolean
says_the_same (LbBook *book, const LbBackup *newest)
{
  g_autoptr (LbBook) copy = lb_book_open (newest->path, LB_BOOK_READ, NULL);

  return copy != NULL && lb_book_is_as_far (book, copy);
}

static void
remove_old (GPtrArray *newest_first)
{
  for (guint i = LB_BACKUPS_KEPT; i < newest_first->len; i++) {
    const LbBackup *backup = g_ptr_array_index (newest_first, i);

    g_unlink (backup->path);
  }
}

/* What was left when the program or the computer stopped while a copy was made. */
static void
remove_litter (const char *own_folder)
{
  g_autoptr (GDir) dir = g_dir_open (own_folder, 0, NULL);
  const gint64 now_s = g_get_real_time () / G_USEC_PER_SEC;
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (own_folder, name, NULL);
    GStatBuf facts;

    if (g_str_has_prefix (name, ".lastbent-") && g_lstat (path, &facts) == 0 &&
        facts.st_mtime < now_s - LITTER_S)
      g_unlink (path);
  }
}

/* Where the next copy goes: the moment, but after every other. */
static char *
place_after (const char *own_folder, GPtrArray *backups, gint64 now_us, GError **error)
{
  const LbBackup *newest = backups->len > 0 ? g_ptr_array_index (backups, 0) : NULL;
  const gint64 made_us = newest != NULL ? MAX (now_us, newest->made_us + G_USEC_PER_SEC) : now_us;
  g_autofree char *name = name_of_moment (made_us);

  if (g_mkdir_with_parents (own_folder, 0700) == 0 && name != NULL)
    return g_build_filename (own_folder, name, NULL);

  const int number = errno;
  g_autofree char *shown = g_filename_display_name (own_folder);
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK,
               _ ("The folder “%s” for copies cannot be made: %s"), shown, g_strerror (number));
  return NULL;
}

gboolean
lb_backup_keep (const char *folder,
                const char *job_path,
                gint64 now_us,
                char **out_path,
                GError **error)
{
  g_return_val_if_fail (folder != NULL, FALSE);
  g_return_val_if_fail (job_path != NULL, FALSE);

  g_autofree char *own_folder = folder_of (folder, job_path);
  g_autoptr (GPtrArray) before = list_folder (own_folder);
  g_autoptr (LbBook) book = lb_book_open (job_path, LB_BOOK_READ, error);
  if (book == NULL)
    return FALSE;
  if (before->len > 0 && says_the_same (book, g_ptr_array_index (before, 0))) {
    if (out_path != NULL)
      *out_path = NULL;
    return TRUE;
  }

  g_autofree char *path = place_after (own_folder, before, now_us, error);
  if (path == NULL || !lb_book_copy_to (book, path, error))
    return FALSE;
  /* Nothing is recorded in a copy by mistake. A file system that knows no such marks does not
   * matter: see lb_backup_is_kept_in(). */
  g_chmod (path, 0400);

  g_autoptr (GPtrArray) after = list_folder (own_folder);
  remove_old (after);
  remove_litter (own_folder);
  if (out_path != NULL)
    *out_path = g_steal_pointer (&path);
  return TRUE;
}

gboolean
lb_backup_is_kept_in (const char *folder, const char *path)
{
  g_return_val_if_fail (folder != NULL, FALSE);
  g_return_val_if_fail (path != NULL, FALSE);

  g_autoptr (GFile) parent = g_file_new_for_path (folder);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  return g_file_has_prefix (file, parent);
}
