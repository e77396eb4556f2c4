/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/raw-copy.h"

#include "book/book-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

/* A disk's sector or a few: what a bad one takes with it. */
#define BLOCK_SIZE 4096

static gboolean
fail_to_read (const char *name, int number, GError **error)
{
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN, _ ("“%s” cannot be opened: %s"), name,
               g_strerror (number));
  return FALSE;
}

/* One block, zeros from where the disk gives no more. */
static gsize
read_block (int fd, guint8 block[BLOCK_SIZE], gsize n, goffset at)
{
  gsize n_read = 0;

  while (n_read < n) {
    const gssize got = pread (fd, block + n_read, n - n_read, at + (goffset) n_read);

    if (got < 0 && errno == EINTR)
      continue;
    if (got <= 0)
      break;
    n_read += (gsize) got;
  }
  memset (block + n_read, 0, n - n_read);
  return n_read;
}

static gboolean
copy_blocks (int from, int to, const char *name, guint64 *out_n_unread, GError **error)
{
  const goffset size = lseek (from, 0, SEEK_END);
  guint8 block[BLOCK_SIZE];

  if (size < 0)
    return fail_to_read (name, errno, error);
  for (goffset at = 0; at < size; at += BLOCK_SIZE) {
    const gsize n = (gsize) MIN (size - at, BLOCK_SIZE);

    *out_n_unread += n - read_block (from, block, n, at);
    if (write (to, block, n) != (gssize) n) {
      g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK,
                   _ ("There is no room to look at a copy of “%s”: %s"), name, g_strerror (errno));
      return FALSE;
    }
  }
  return TRUE;
}

gboolean
lb_raw_copy (const char *from,
             const char *to,
             const char *name,
             guint64 *out_n_unread,
             GError **error)
{
  /* O_NONBLOCK: see lb_file_look(). */
  const int from_fd = g_open (from, O_RDONLY | O_CLOEXEC | O_NONBLOCK, 0);
  if (from_fd < 0)
    return fail_to_read (name, errno, error);

  const int to_fd = g_open (to, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
  if (to_fd < 0) {
    const int number = errno;
    close (from_fd);
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DISK, _ ("“%s” cannot be made: %s"), to,
                 g_strerror (number));
    return FALSE;
  }
  const gboolean is_copied = copy_blocks (from_fd, to_fd, name, out_n_unread, error);
  close (from_fd);
  close (to_fd);
  return is_copied;
}

void
lb_raw_copy_roll_back (const char *damaged, const char *copy, const char *name)
{
  g_autofree char *journal = g_strconcat (damaged, "-journal", NULL);
  g_autofree char *journal_copy = g_strconcat (copy, "-journal", NULL);
  guint64 n_unread = 0;

  if (!g_file_test (journal, G_FILE_TEST_IS_REGULAR) ||
      !lb_raw_copy (journal, journal_copy, name, &n_unread, NULL))
    return;

  g_autoptr (sqlite3) db = lb_connection_open (copy, SQLITE_OPEN_READWRITE, name, NULL);
  if (db != NULL)
    sqlite3_exec (db, "SELECT count(*) FROM sqlite_schema", NULL, NULL, NULL);
}
