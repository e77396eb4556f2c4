/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/frame-memory.h"

#ifdef __GLIBC__
#include <malloc.h>
#endif

/* The picture of a window of 3840 × 2160 device pixels of four bytes is 32 MB: the most that
 * mallopt(3) takes for a block that is not a mapping of its own. */
#define BLOCK_MOST (32 * 1024 * 1024)

/* What may lie free at the end before it is given back: two such pictures. */
#define FREE_MOST (2 * BLOCK_MOST)

void
lb_frame_memory_keep (void)
{
#ifdef __GLIBC__
  mallopt (M_MMAP_THRESHOLD, BLOCK_MOST);
  mallopt (M_TRIM_THRESHOLD, FREE_MOST);
#endif
}
