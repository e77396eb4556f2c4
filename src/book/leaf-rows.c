/* SPDX-License-Identifier: GPL-3.0-or-later */
/* SQLite's table leaves without SQLite (SQLite documentation, "Database File Format", sections 1.5
 * "B-tree Pages", 1.6 "Cell Payload Overflow Pages" and 2.1 "Record Format").
 *
 * A damaged file is mostly whole: a tail is missing, a few sectors were lost, a few bytes flipped.
 * The tree leads from the first page down to the leaves, so that one bad page near its root hides
 * every row below it; the rows themselves stand in the leaves, each with its number, so that they
 * can be found by looking at every page instead. Pages of indexes and inner pages are passed over:
 * they hold nothing that the leaves don't.
 *
 * Every offset and length is held against the page's or the file's end before it is used. */
#include "book/leaf-rows.h"

#include <string.h>

#define PAGE_LEAST 512
#define PAGE_MOST  65536

/* Offsets within the file's and a page's header. */
#define FILE_HEADER_SIZE   100
#define PAGE_SIZE_AT       16
#define PAGE_KIND_AT       0
#define PAGE_N_CELLS_AT    3
#define PAGE_CELLS_BEGIN   8 /* of a leaf */
#define KIND_TABLE_LEAF    0x0d
#define OVERFLOW_HEAD_SIZE 4 /* number of the next page */

/* A cell takes two bytes of pointer and at least four of content. */
#define CELL_BYTES_LEAST 6

typedef struct
{
  const guint8 *file;
  gsize n;
  gsize page_size;
  GByteArray *payload; /* of a row that goes on on other pages */
} Scan;

static guint
read_16 (const guint8 *at)
{
  return (guint) at[0] << 8 | at[1];
}

static guint32
read_32 (const guint8 *at)
{
  return (guint32) at[0] << 24 | (guint32) at[1] << 16 | (guint32) at[2] << 8 | at[3];
}

/* A number of one to nine bytes, seven bits each and all eight of the ninth. Returns the bytes it
 * took, 0 when it does not end before @end. */
static gsize
read_varint (const guint8 *at, const guint8 *end, guint64 *out_value)
{
  guint64 value = 0;

  for (gsize i = 0; i < 9 && at + i < end; i++) {
    if (i == 8) {
      *out_value = value << 8 | at[i];
      return 9;
    }
    value = value << 7 | (at[i] & 0x7f);
    if (at[i] < 0x80) {
      *out_value = value;
      return i + 1;
    }
  }
  return 0;
}

static gint64
read_integer (const guint8 *at, gsize n)
{
  guint64 value = at[0] >= 0x80 ? G_MAXUINT64 : 0;

  for (gsize i = 0; i < n; i++)
    value = value << 8 | at[i];
  return (gint64) value;
}

static double
read_real (const guint8 *at)
{
  const guint64 bits = (guint64) read_integer (at, 8);
  double value;

  memcpy (&value, &bits, sizeof value);
  return value;
}

/* One value by its serial type; %FALSE when it does not end before @end or is of no type. */
static gboolean
read_value (guint64 type, const guint8 **at, const guint8 *end, LbCell *out)
{
  static const guint8 integer_sizes[] = { 0, 1, 2, 3, 4, 6, 8 };
  const gsize left = (gsize) (end - *at);
  gsize n = 0;

  *out = (LbCell){ .kind = LB_CELL_NULL };
  if (type == 0)
    return TRUE;
  if (type == 8 || type == 9) {
    *out = (LbCell){ .kind = LB_CELL_INTEGER, .integer = (gint64) type - 8 };
    return TRUE;
  }
  if (type < G_N_ELEMENTS (integer_sizes)) {
    n = integer_sizes[type];
    if (n > left)
      return FALSE;
    *out = (LbCell){ .kind = LB_CELL_INTEGER, .integer = read_integer (*at, n) };
  } else if (type == 7) {
    n = 8;
    if (n > left)
      return FALSE;
    *out = (LbCell){ .kind = LB_CELL_REAL, .real = read_real (*at) };
  } else {
    if (type < 12 || (type - 12) / 2 > left)
      return FALSE;
    n = (gsize) ((type - 12) / 2);
    *out = (LbCell){ .kind = type % 2 == 0 ? LB_CELL_BLOB : LB_CELL_TEXT,
                     .text = (const char *) *at,
                     .n_bytes = n };
  }
  *at += n;
  return TRUE;
}

/* The values of a record, which must be just as long as its types say. */
static gboolean
read_record (const guint8 *record, gsize n, LbCell cells[LB_LEAF_CELLS_MOST], guint *out_n_cells)
{
  const guint8 *const end = record + n;
  guint64 head_size = 0;
  const gsize taken = read_varint (record, end, &head_size);
  guint n_cells = 0;

  if (taken == 0 || head_size < taken || head_size > n)
    return FALSE;

  const guint8 *type_at = record + taken;
  const guint8 *const types_end = record + head_size;
  const guint8 *value_at = types_end;
  while (type_at < types_end) {
    guint64 type = 0;
    const gsize type_size = read_varint (type_at, types_end, &type);

    if (type_size == 0 || n_cells == LB_LEAF_CELLS_MOST ||
        !read_value (type, &value_at, end, &cells[n_cells]))
      return FALSE;
    n_cells++;
    type_at += type_size;
  }
  *out_n_cells = n_cells;
  return value_at == end;
}

/* The pages after the first of a long row. Each adds something, so that no chain is endless. */
static gboolean
follow_overflow (Scan *scan, guint32 page, gsize size)
{
  const gsize room = scan->page_size - OVERFLOW_HEAD_SIZE;

  while (scan->payload->len < size) {
    const gsize left = size - scan->payload->len;

    if (page < 2 || (guint64) page * scan->page_size > scan->n)
      return FALSE;
    const guint8 *at = scan->file + (page - 1) * scan->page_size;
    g_byte_array_append (scan->payload, at + OVERFLOW_HEAD_SIZE, (guint) MIN (left, room));
    page = read_32 (at);
  }
  return TRUE;
}

/* How much of a payload stands on the leaf itself. */
static gsize
local_size (gsize payload_size, gsize usable)
{
  const gsize most = usable - 35;
  const gsize least = (usable - 12) * 32 / 255 - 23;

  if (payload_size <= most)
    return payload_size;

  const gsize local = least + (payload_size - least) % (usable - 4);
  return local <= most ? local : least;
}

static gboolean
read_cell (Scan *scan, const guint8 *at, const guint8 *end, LbLeafRowFunc func, gpointer data)
{
  LbCell cells[LB_LEAF_CELLS_MOST];
  guint n_cells = 0;
  guint64 payload_size = 0, rowid = 0;
  gsize taken = read_varint (at, end, &payload_size);

  if (taken == 0 || payload_size > LB_LEAF_BYTES_MOST)
    return FALSE;
  at += taken;
  taken = read_varint (at, end, &rowid);
  if (taken == 0)
    return FALSE;
  at += taken;

  const gsize local = local_size ((gsize) payload_size, scan->page_size);
  const guint8 *record = at;
  if ((gsize) (end - at) < local + (local < payload_size ? OVERFLOW_HEAD_SIZE : 0))
    return FALSE;
  if (local < payload_size) {
    g_byte_array_set_size (scan->payload, 0);
    g_byte_array_append (scan->payload, at, (guint) local);
    if (!follow_overflow (scan, read_32 (at + local), (gsize) payload_size))
      return FALSE;
    record = scan->payload->data;
  }
  if (!read_record (record, (gsize) payload_size, cells, &n_cells))
    return FALSE;
  func ((gint64) rowid, cells, n_cells, data);
  return TRUE;
}

static guint64
scan_page (Scan *scan, gsize page_at, LbLeafRowFunc func, gpointer data)
{
  const guint8 *const page = scan->file + page_at;
  const guint8 *const head = page + (page_at == 0 ? FILE_HEADER_SIZE : 0);
  const guint8 *const end = page + scan->page_size;
  guint64 n_bad = 0;

  if (head[PAGE_KIND_AT] != KIND_TABLE_LEAF)
    return 0;

  const gsize n_cells = read_16 (head + PAGE_N_CELLS_AT);
  if (n_cells > scan->page_size / CELL_BYTES_LEAST)
    return 0;
  const guint8 *const pointers = head + PAGE_CELLS_BEGIN;
  for (gsize i = 0; i < n_cells && pointers + 2 * i + 2 <= end; i++) {
    const gsize at = read_16 (pointers + 2 * i);

    if (at >= scan->page_size || !read_cell (scan, page + at, end, func, data))
      n_bad++;
  }
  return n_bad;
}

gsize
lb_leaf_rows_page_size (const guint8 *file, gsize n, gsize fallback)
{
  if (n < FILE_HEADER_SIZE)
    return fallback;

  const gsize said = read_16 (file + PAGE_SIZE_AT) == 1 ? PAGE_MOST : read_16 (file + PAGE_SIZE_AT);
  return said >= PAGE_LEAST && (said & (said - 1)) == 0 ? said : fallback;
}

guint64
lb_leaf_rows_scan (const guint8 *file, gsize n, gsize page_size, LbLeafRowFunc func, gpointer data)
{
  guint64 n_bad = 0;

  g_return_val_if_fail (file != NULL || n == 0, 0);
  g_return_val_if_fail (
    page_size >= PAGE_LEAST && page_size <= PAGE_MOST && (page_size & (page_size - 1)) == 0, 0);

  Scan scan = { .file = file, .n = n, .page_size = page_size, .payload = g_byte_array_new () };
  for (gsize at = 0; at + page_size <= n; at += page_size)
    n_bad += scan_page (&scan, at, func, data);
  g_byte_array_unref (scan.payload);
  return n_bad;
}
