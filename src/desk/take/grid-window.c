/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A grid is small and laid out at once: at each change the piles are made anew, drawn, and counted;
 * "Lay Out" hands exactly those to the job. A grid that cannot be laid says why and takes nothing. */
#include "desk/take/grid-window.h"

#include "desk/shell/look.h"
#include "desk/shell/say.h"
#include "desk/take/pile-kind-group.h"
#include "draw/mark.h"
#include "draw/palette.h"
#include "exchange/pile-grid.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

struct _LbGridWindow
{
  AdwWindow parent_instance;

  /* Template widgets */
  AdwEntryRow *bearing_row;
  AdwEntryRow *bent_spacing_row;
  GtkWidget *content_box;
  AdwEntryRow *first_bent_row;
  LbPileKindGroup *kind_group;
  GtkWidget *lay_button;
  AdwEntryRow *n_bents_row;
  AdwEntryRow *n_rows_row;
  GtkDrawingArea *picture;
  AdwEntryRow *row_spacing_row;
  GtkLabel *verdict_label;

  /* Owned */
  LbJob *job;
  GStringChunk *strings;
  GArray *piles; /* NULL while the rows make no grid */
};

G_DEFINE_FINAL_TYPE (LbGridWindow, lb_grid_window, ADW_TYPE_WINDOW)

static const char *
text_of (AdwEntryRow *row)
{
  return gtk_editable_get_text (GTK_EDITABLE (row));
}

/* Red or not; returns @is_read. */
static gboolean
mark_row (AdwEntryRow *row, gboolean is_read)
{
  if (is_read)
    gtk_widget_remove_css_class (GTK_WIDGET (row), "error");
  else
    gtk_widget_add_css_class (GTK_WIDGET (row), "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_STATE_INVALID,
                               is_read ? GTK_ACCESSIBLE_INVALID_FALSE : GTK_ACCESSIBLE_INVALID_TRUE,
                               -1);

  return is_read;
}

static gboolean
read_count (AdwEntryRow *row, guint *out_count, GError **error)
{
  guint64 count;
  const gboolean is_read = g_ascii_string_to_unsigned (text_of (row), 10, 0, 100000, &count, NULL);

  if (is_read)
    *out_count = (guint) count;
  else
    /* Translators: a row's title, and what was typed there. */
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, _ ("%s: “%s” is not a whole number"),
                 adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)), text_of (row));

  return mark_row (row, is_read);
}

static gboolean
read_length (LbGridWindow *self, AdwEntryRow *row, double *out_m, GError **error)
{
  const LbUnits units = lb_job_get_voice (self->job)->units;
  const gboolean is_read = lb_quantity_from_text (LB_QUANTITY_LENGTH, units, text_of (row), out_m,
                                                  NULL);

  if (!is_read)
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 _ ("%s: “%s” is not a number; type it as 12 or 12.5"),
                 adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)), text_of (row));

  return mark_row (row, is_read);
}

static gboolean
read_grid (LbGridWindow *self, LbPileGrid *out_grid, GError **error)
{
  LbPileGrid grid = { 0 };

  if (!read_count (self->n_bents_row, &grid.n_bents, error) ||
      !read_count (self->n_rows_row, &grid.n_rows, error) ||
      !read_count (self->first_bent_row, &grid.first_bent, error) ||
      !read_length (self, self->bent_spacing_row, &grid.bent_spacing_m, error) ||
      !read_length (self, self->row_spacing_row, &grid.row_spacing_m, error) ||
      !mark_row (self->bearing_row,
                 lb_bearing_from_text (text_of (self->bearing_row), &grid.bearing_rad, error)))
    return FALSE;
  *out_grid = grid;

  return TRUE;
}

static void
say_grid (LbGridWindow *self, const GError *error)
{
  g_autofree char *said = NULL;

  if (error != NULL) {
    said = g_strdup (error->message);
  } else {
    const LbPile *first = &g_array_index (self->piles, LbPile, 0);
    const LbPile *last = &g_array_index (self->piles, LbPile, self->piles->len - 1);

    said = g_strdup_printf (
      /* Translators: how many piles, and the marks of the first and the last. */
      ngettext ("%u pile, %s to %s", "%u piles, %s to %s", self->piles->len), self->piles->len,
      first->mark, last->mark);
  }
  gtk_label_set_text (self->verdict_label, said);
}

static void
update (LbGridWindow *self)
{
  g_autoptr (GError) error = NULL;
  LbPileGrid grid;
  LbPile like;

  if (self->job == NULL) /* rows that are set up, or go */
    return;
  g_clear_pointer (&self->piles, g_array_unref);
  g_string_chunk_clear (self->strings);

  if (!lb_pile_kind_group_get (self->kind_group, &like))
    g_set_error_literal (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                         _ ("One of the rows marked red cannot be read."));
  else if (read_grid (self, &grid, &error))
    self->piles = lb_pile_grid_lay (&grid, &like, self->strings, &error);

  say_grid (self, error);
  gtk_widget_set_sensitive (self->lay_button, self->piles != NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self->picture));
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  LbGridWindow *self = data;
  const LbPalette *palette = lb_look_palette (GTK_WIDGET (area));
  double left = G_MAXDOUBLE, right = -G_MAXDOUBLE, bottom = G_MAXDOUBLE, top = -G_MAXDOUBLE;

  lb_ink_set (cr, palette, LB_INK_WATER);
  cairo_paint (cr);
  if (self->piles == NULL)
    return;

  for (guint i = 0; i < self->piles->len; i++) {
    const LbPile *pile = &g_array_index (self->piles, LbPile, i);

    left = MIN (left, pile->x_m);
    right = MAX (right, pile->x_m);
    bottom = MIN (bottom, pile->y_m);
    top = MAX (top, pile->y_m);
  }

  const double scale = MIN ((width - 48) / MAX (right - left, 1.0),
                            (height - 48) / MAX (top - bottom, 1.0));
  const double size = CLAMP (scale * 0.8, 3.0, 18.0);

  for (guint i = 0; i < self->piles->len; i++) {
    const LbPile *pile = &g_array_index (self->piles, LbPile, i);
    const LbMark mark = { .shape = pile->outline.shape,
                          .step = LB_STEP_STANDING,
                          .share_left = NAN };

    cairo_save (cr);
    cairo_translate (cr, width / 2.0 + (pile->x_m - (left + right) / 2) * scale,
                     height / 2.0 - (pile->y_m - (bottom + top) / 2) * scale);
    lb_mark_draw (cr, palette, &mark, size);
    cairo_restore (cr);
  }
}

static void
laid_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (LbGridWindow) self = data;
  g_autoptr (GError) error = NULL;

  const gboolean is_laid = lb_job_add_piles_finish (LB_JOB (source), result, &error);

  if (self->job == NULL) /* closed in the meantime */
    return;
  if (is_laid) {
    gtk_window_destroy (GTK_WINDOW (self));
    return;
  }
  gtk_widget_set_sensitive (self->content_box, TRUE);
  gtk_widget_set_sensitive (self->lay_button, TRUE);
  lb_say_error (GTK_WIDGET (self), _ ("The grid was not laid out"), g_steal_pointer (&error));
}

static void
lay_clicked_cb (LbGridWindow *self)
{
  /* The worker reads the piles: they stay as they are until it has finished. */
  gtk_widget_set_sensitive (self->lay_button, FALSE);
  gtk_widget_set_sensitive (self->content_box, FALSE);
  lb_job_add_piles_async (self->job, (const LbPile *) (gpointer) self->piles->data,
                          self->piles->len, g_object_ref (self), g_object_unref, NULL, NULL, NULL,
                          laid_cb, g_object_ref (self));
}

static void
title_row (AdwEntryRow *row, const char *title, LbUnits units)
{
  g_autofree char *whole = g_strdup_printf (_ ("%s (%s)"), title,
                                            lb_quantity_unit (LB_QUANTITY_LENGTH, units));

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), whole);
}

static void
lb_grid_window_dispose (GObject *object)
{
  LbGridWindow *self = LB_GRID_WINDOW (object);

  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_GRID_WINDOW);

  G_OBJECT_CLASS (lb_grid_window_parent_class)->dispose (object);
}

static void
lb_grid_window_finalize (GObject *object)
{
  LbGridWindow *self = LB_GRID_WINDOW (object);

  g_clear_pointer (&self->piles, g_array_unref);
  g_string_chunk_free (self->strings);

  G_OBJECT_CLASS (lb_grid_window_parent_class)->finalize (object);
}

static void
lb_grid_window_class_init (LbGridWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_grid_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_grid_window_finalize;

  g_type_ensure (LB_TYPE_PILE_KIND_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/grid-window.ui");
  gtk_widget_class_bind_template_child (widget_class, LbGridWindow, bearing_row);
  gtk_widget_class_bind_template_child (widget_class, LbGridWindow, bent_spacing_row);
  gtk_widget_class_bind_template_child (widget_class, LbGridWindow, content_box);
  gtk_widget_class_bind_template_child (widget_class, LbGridWindow, first_bent_row);
  gtk_widget_class_bind_template_child (widget_class, LbGridWindow, kind_group);
  gtk_widget_class_bind_template_child (widget_class, LbGridWindow, lay_button);
  gtk_widget_class_bind_template_child (widget_class, LbGridWindow, n_bents_row);
  gtk_widget_class_bind_template_child (widget_class, LbGridWindow, n_rows_row);
  gtk_widget_class_bind_template_child (widget_class, LbGridWindow, picture);
  gtk_widget_class_bind_template_child (widget_class, LbGridWindow, row_spacing_row);
  gtk_widget_class_bind_template_child (widget_class, LbGridWindow, verdict_label);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_bind_template_callback (widget_class, gtk_window_close);
  gtk_widget_class_bind_template_callback (widget_class, lay_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, update);
}

static void
lb_grid_window_init (LbGridWindow *self)
{
  self->strings = g_string_chunk_new (4096);
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drawing_area_set_draw_func (self->picture, draw_cb, self, NULL);
  lb_look_follow (GTK_WIDGET (self->picture));
}

LbGridWindow *
lb_grid_window_new (GtkWindow *parent, LbJob *job)
{
  LbGridWindow *self;

  g_return_val_if_fail (parent == NULL || GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (LB_IS_JOB (job), NULL);

  const LbUnits units = lb_job_get_voice (job)->units;

  self = g_object_new (LB_TYPE_GRID_WINDOW, "transient-for", parent, NULL);
  self->job = g_object_ref (job);
  title_row (self->bent_spacing_row, _ ("From bent to bent"), units);
  title_row (self->row_spacing_row, _ ("From row to row"), units);
  lb_pile_kind_group_set_units (self->kind_group, units);
  update (self);

  return self;
}
