/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Memory in large pages where the kernel has them: to touch some megabytes for the first time, small
 * page by small page, can cost more than to fill them (docs/speed.md). */

/* Not cleared; what is much smaller than a large page comes as from g_malloc(). */
gpointer lb_large_room_new (gsize size);
void lb_large_room_free (gpointer room);

/* The same for the whole pages within memory that is somebody else's. */
void lb_large_room_advise (gpointer room, gsize size);

G_END_DECLS
