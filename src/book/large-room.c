/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/large-room.h"

#include <sys/mman.h>
#include <unistd.h>

/* Of a large page on the machines that have one of this kind: Linux, admin-guide/mm/transhuge. */
#define LARGE_PAGE ((gsize) 2 * 1024 * 1024)

/* What a large page has to hold of a room, so that it is worth clearing all of it. */
#define LARGE_ENOUGH (LARGE_PAGE / 2)

void
lb_large_room_advise (gpointer room, gsize size)
{
#ifdef MADV_HUGEPAGE
  const gsize page = (gsize) sysconf (_SC_PAGESIZE);
  const gsize begin = ((gsize) room + page - 1) / page * page;
  const gsize end = (gsize) room + size;

  if (end > begin && end - begin >= LARGE_PAGE)
    madvise ((gpointer) begin, end - begin, MADV_HUGEPAGE);
#endif
}

gpointer
lb_large_room_new (gsize size)
{
  if (size < LARGE_ENOUGH)
    return g_aligned_alloc (MAX (size, 1), 1, sizeof (gpointer));

  const gsize large = (size + LARGE_PAGE - LARGE_ENOUGH) / LARGE_PAGE * LARGE_PAGE;
  gpointer room = g_aligned_alloc (MAX (size, large), 1, LARGE_PAGE);

  lb_large_room_advise (room, large);
  return room;
}

void
lb_large_room_free (gpointer room)
{
  g_aligned_free (room);
}
