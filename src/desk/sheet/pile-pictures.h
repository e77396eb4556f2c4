/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Side view and section of a pile, and what is recorded by touching a bar. */
#define LB_TYPE_PILE_PICTURES (lb_pile_pictures_get_type ())
G_DECLARE_FINAL_TYPE (LbPilePictures, lb_pile_pictures, LB, PILE_PICTURES, GtkBox)

/* @job NULL for nothing; to be called again when the job has changed. */
void lb_pile_pictures_show (LbPilePictures *self, LbJob *job, guint pile);

G_END_DECLS
