/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"
#include "desk/shell/selection.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What the tests of the pile sheet begin with: a sheet of pile SHEET_PILE of the small job, in a
 * window; and how they look for what stands on it. */
#define SHEET_PILE 4u

typedef struct
{
  char *path;
  LbJob *job;
  LbSelection *selection;
  GtkWidget *window;
  GtkWidget *sheet;
  GtkWidget *section;
} SheetFixture;

void sheet_set_up (SheetFixture *fixture, gconstpointer data);
void sheet_tear_down (SheetFixture *fixture, gconstpointer data);

const LbPileState *sheet_state_of (SheetFixture *fixture, guint pile);
const LbPile *sheet_facts_of (SheetFixture *fixture, guint pile);

typedef gboolean (*SheetMatches) (GtkWidget *widget, const void *wanted);

/* The first that matches, only where somebody could see it; NULL for none. */
GtkWidget *sheet_find (GtkWidget *parent, SheetMatches matches, const void *wanted);
GtkWidget *sheet_find_type (GtkWidget *parent, GType type); /* which must be there */

gboolean sheet_reads (GtkWidget *widget, const void *wanted);     /* a label with that text in it */
gboolean sheet_is_button (GtkWidget *widget, const void *wanted); /* with such a label */
gboolean sheet_is_row (GtkWidget *widget, const void *wanted);    /* whose title begins so */
gboolean sheet_has_icon (GtkWidget *widget, const void *wanted);  /* a button with that icon */

void sheet_assert_reads (GtkWidget *parent, const char *text);
void sheet_click_button (GtkWidget *parent, const char *label);

/* By the hand: a bar of the section, a key that is a shortcut of @widget. */
void sheet_touch_bar (SheetFixture *fixture, guint bar);
GtkGesture *sheet_section_click (SheetFixture *fixture);
gboolean sheet_press_key (GtkWidget *widget, guint keyval);

G_END_DECLS
