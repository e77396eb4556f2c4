/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The job file as the disk has it: what stands at a path, before SQLite touches it, and how a
 * finished file comes to stand there.
 *
 * A new file is made whole beside its place under a partner name, synced, moved to its place
 * without replacing anything, and the folder synced: at no moment is there half a job file under
 * the name that was asked for. */
#define _GNU_SOURCE /* renameat2() */
#include "book/book-private.h"

#include <errno.h>
#include <fcntl.h>
#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* SQLite file format, section 1.3, "The Database Header". */
#define HEADER_SIZE           100
#define HEADER_WRITE_VERSION  18
#define HEADER_READ_VERSION   19
#define HEADER_ENCODING       56
#define HEADER_USER_VERSION   60
#define HEADER_APPLICATION_ID 68
#define ROLLBACK_JOURNAL      1
#define UTF_8                 1

/* Far beyond any job: a hundred times 10,000 piles with 200,000 entries is 4 GB. */
#define SIZE_MOST (G_GINT64_CONSTANT (4) << 30)

static guint32
read_big_endian (const guint8 *at)
{
  return (guint32) at[0] << 24 | (guint32) at[1] << 16 | (guint32) at[2] << 8 | at[3];
}

/* Which of our files it says it is; 0 for none. */
static guint
kind_of_header (const guint8 header[HEADER_SIZE], gssize n)
{
  if (n < HEADER_SIZE || memcmp (header, "SQLite format 3", 16) != 0)
    return 0;
  switch (read_big_endian (header + HEADER_APPLICATION_ID)) {
  case LB_BOOK_APPLICATION_ID:
    return LB_FILE_JOB;
  case LB_PACKET_APPLICATION_ID:
    return LB_FILE_PACKET;
  default:
    return 0;
  }
}

static gboolean
check_welcome (guint kind, guint kinds, const char *name, GError **error)
{
  if ((kind & kinds) != 0)
    return TRUE;
  if (kind == LB_FILE_PACKET)
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_FOREIGN,
                 _ ("“%s” is a packet, not a job file; open its job and join the packet there"),
                 name);
  else if ((kinds & LB_FILE_PACKET) != 0)
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_FOREIGN,
                 _ ("“%s” is neither a packet nor a job file of this program"), name);
  else
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_FOREIGN,
                 _ ("“%s” is not a job file of this program; a pile list is taken in with "
                    "“Take piles from a list”"),
                 name);
  return FALSE;
}

static gboolean
look_at_format (const guint8 header[HEADER_SIZE], const char *name, GError **error)
{
  const guint32 format = read_big_endian (header + HEADER_USER_VERSION);
  if (format > LB_BOOK_FORMAT) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_NEWER,
                 _ ("“%s” was written by a newer version of this program (format %u, this one "
                    "knows %d); open it with that version"),
                 name, format, LB_BOOK_FORMAT);
    return FALSE;
  }
  if (format < LB_BOOK_FORMAT_OLDEST || header[HEADER_WRITE_VERSION] != ROLLBACK_JOURNAL ||
      header[HEADER_READ_VERSION] != ROLLBACK_JOURNAL ||
      read_big_endian (header + HEADER_ENCODING) != UTF_8)
  {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_DAMAGED,
                 _ ("“%s” is damaged: its first page does not say what a job file says; go back "
                    "to a copy"),
                 name);
    return FALSE;
  }
  return TRUE;
}

static gboolean
fail_to_open (const char *name, int number, GError **error)
{
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN, _ ("“%s” cannot be opened: %s"), name,
               g_strerror (number));
  return FALSE;
}

static gboolean
look_at_kind (const struct stat *facts, const char *name, GError **error)
{
  if (S_ISDIR (facts->st_mode)) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN, _ ("“%s” is a folder, not a job file"),
                 name);
    return FALSE;
  }
  if (!S_ISREG (facts->st_mode)) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN, _ ("“%s” is not an ordinary file"),
                 name);
    return FALSE;
  }
  if (facts->st_size == 0) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_FOREIGN,
                 _ ("“%s” is empty: there is no job in it"), name);
    return FALSE;
  }
  if (facts->st_size > SIZE_MOST) {
    g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_FOREIGN,
                 _ ("“%s” is larger than any job file"), name);
    return FALSE;
  }
  return TRUE;
}

/**
 * lb_file_look:
 *
 * What can be known of @path without SQLite and without changing anything: that it is an ordinary
 * file whose first page says that it is a file of ours that is welcome, of a version we know.
 */
gboolean
lb_file_look (const char *path, const char *name, guint kinds, LbFileFacts *out, GError **error)
{
  struct stat facts;
  guint8 header[HEADER_SIZE];

  /* O_NONBLOCK: a pipe put in a file's place must not make us wait for its writer. */
  const int fd = g_open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK, 0);
  if (fd < 0)
    return fail_to_open (name, errno, error);
  if (fstat (fd, &facts) != 0) {
    const int number = errno;
    close (fd);
    return fail_to_open (name, number, error);
  }
  if (!look_at_kind (&facts, name, error)) {
    close (fd);
    return FALSE;
  }
  const gssize n = pread (fd, header, sizeof header, 0);
  close (fd);

  const guint kind = kind_of_header (header, n);
  if (!check_welcome (kind, kinds, name, error) || !look_at_format (header, name, error))
    return FALSE;

  g_autofree char *folder = g_path_get_dirname (path);
  *out = (LbFileFacts){
    .kind = kind,
    .device = facts.st_dev,
    .inode = facts.st_ino,
    .is_writable = faccessat (AT_FDCWD, path, W_OK, AT_EACCESS) == 0 &&
                   faccessat (AT_FDCWD, folder, W_OK, AT_EACCESS) == 0,
  };
  return TRUE;
}

gboolean
lb_file_must_not_exist (const char *path, GError **error)
{
  struct stat facts;

  if (g_lstat (path, &facts) != 0)
    return TRUE;

  g_autofree char *name = g_filename_display_basename (path);
  g_set_error (error, LB_BOOK_ERROR, LB_BOOK_ERROR_OPEN,
               _ ("“%s” exists already; choose another name"), name);
  return FALSE;
}

/* Where a file that is to stand at @path is made first: in the same folder, with a name that
 * nothing has. */
char *
lb_file_partner (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *uuid = g_uuid_string_random ();
  g_autofree char *name = g_strdup_printf (".lastbent-%s.part", uuid);

  return g_build_filename (folder, name, NULL);
}

/* Removes a partner that came to nothing, with the journal that SQLite may have left beside it. */
void
lb_file_discard (const char *partner)
{
  g_autofree char *journal = g_strconcat (partner, "-journal", NULL);

  g_unlink (partner);
  g_unlink (journal);
}

/* Folders are opened for reading to be synced, files too; some file systems cannot sync folders
 * and say EINVAL, which is as good as they get. */
static gboolean
sync_path (const char *path)
{
  const int fd = g_open (path, O_RDONLY | O_CLOEXEC, 0);

  if (fd < 0)
    return FALSE;

  const gboolean is_synced = fsync (fd) == 0 || errno == EINVAL;
  const int number = errno;
  close (fd);
  errno = number;
  return is_synced;
}

static gboolean
move_to_free_name (const char *partner, const char *path)
{
#ifdef RENAME_NOREPLACE
  if (renameat2 (AT_FDCWD, partner, AT_FDCWD, path, RENAME_NOREPLACE) == 0)
    return TRUE;
  if (errno != EINVAL && errno != ENOSYS)
    return FALSE;
#endif
  /* The file system cannot do it in one go. A hard link never replaces either. */
  if (link (partner, path) == 0)
    return g_unlink (partner) == 0;
  if (errno == EEXIST || g_file_test (path, G_FILE_TEST_EXISTS)) {
    errno = EEXIST;
    return FALSE;
  }
  return g_rename (partner, path) == 0;
}

/* Moves a finished @partner to @path for good; removes it when that cannot be done. */
gboolean
lb_file_publish (const char *partner, const char *path, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);

  if (sync_path (partner) && move_to_free_name (partner, path) && sync_path (folder))
    return TRUE;

  const int number = errno;
  g_autofree char *name = g_filename_display_basename (path);
  g_unlink (partner);
  g_set_error (error, LB_BOOK_ERROR, number == EEXIST ? LB_BOOK_ERROR_OPEN : LB_BOOK_ERROR_DISK,
               _ ("“%s” cannot be made: %s"), name, g_strerror (number));
  return FALSE;
}
