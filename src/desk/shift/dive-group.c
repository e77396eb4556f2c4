/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shift/dive-group.h"

#include "book/clock-text.h"
#include "draw/plan-words.h"
#include "trade/bottom-time.h"
#include "trade/trade-error.h"

#include <glib/gi18n-lib.h>

struct _LbDiveGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  AdwEntryRow *depth_row;
  AdwEntryRow *diver_row;
  AdwEntryRow *left_bottom_row;
  AdwEntryRow *left_surface_row;
  AdwEntryRow *reached_surface_row;
};

G_DEFINE_FINAL_TYPE (LbDiveGroup, lb_dive_group, LB_TYPE_SHIFT_GROUP)

static const char *
text_of (AdwEntryRow *row)
{
  return gtk_editable_get_text (GTK_EDITABLE (row));
}

/* The shift the times are of: the sheet's, or the one that recording will open. */
static LbShift
shift_of (LbDiveGroup *self)
{
  const LbShift *shift = lb_shift_group_get_shift (LB_SHIFT_GROUP (self));
  LbShift coming = { .seq = 0 };

  if (shift != NULL)
    return *shift;
  coming.day = lb_job_present_day (&coming.watch);

  return coming;
}

/* A time of day; only the last one may be left empty. */
static gboolean
read_time (LbDiveGroup *self, AdwEntryRow *row, gboolean may_be_empty, gint64 *out_us)
{
  const LbShift shift = shift_of (self);
  g_autoptr (GError) error = NULL;
  gint64 us = 0;

  if (!may_be_empty || *text_of (row) != '\0')
    lb_clock_from_text (&shift, text_of (row), &us, &error);
  lb_shift_group_mark_row (GTK_WIDGET (row), error);
  *out_us = us;

  return error == NULL;
}

static gboolean
read_diver (LbDiveGroup *self, const char **out_diver)
{
  g_autoptr (GError) error = NULL;

  if (*text_of (self->diver_row) == '\0')
    g_set_error_literal (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_INCOMPLETE,
                         _ ("Say who dived: a role or initials"));
  lb_shift_group_mark_row (GTK_WIDGET (self->diver_row), error);
  *out_diver = text_of (self->diver_row);

  return error == NULL;
}

static gboolean
is_in_order (LbDiveGroup *self, const LbDraft *draft)
{
  GtkWidget *wrong = GTK_WIDGET (self->left_bottom_row);
  g_autoptr (GError) error = NULL;

  if (draft->end_us <= draft->start_us) {
    g_set_error_literal (&error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                         _ ("The diver left bottom before leaving the surface; check the times"));
  } else if (draft->up_us != 0 && draft->up_us < draft->end_us) {
    g_set_error_literal (
      &error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
      _ ("The diver reached the surface before leaving bottom; check the times"));
    wrong = GTK_WIDGET (self->reached_surface_row);
  }
  if (error == NULL)
    return TRUE;
  lb_shift_group_mark_row (wrong, error);

  return FALSE;
}

static void
record_clicked_cb (LbDiveGroup *self)
{
  LbShiftGroup *group = LB_SHIFT_GROUP (self);
  LbDraft draft = LB_DRAFT_INIT (LB_ENTRY_DIVE);

  if (!read_diver (self, &draft.what) ||
      !lb_shift_group_read_amount (group, GTK_WIDGET (self->depth_row), LB_QUANTITY_LENGTH,
                                   &draft.amount) ||
      !read_time (self, self->left_surface_row, FALSE, &draft.start_us) ||
      !read_time (self, self->left_bottom_row, FALSE, &draft.end_us) ||
      !read_time (self, self->reached_surface_row, TRUE, &draft.up_us) ||
      !is_in_order (self, &draft) || !lb_shift_group_record (group, &draft))
    return;

  /* Diver and depth stay: the next dive is often the same. */
  gtk_editable_set_text (GTK_EDITABLE (self->left_surface_row), "");
  gtk_editable_set_text (GTK_EDITABLE (self->left_bottom_row), "");
  gtk_editable_set_text (GTK_EDITABLE (self->reached_surface_row), "");
  gtk_widget_grab_focus (GTK_WIDGET (self->left_surface_row));
}

/* Bottom time against the limit: a bar and the two figures. */
static GtkWidget *
lb_dive_group_suffix (LbShiftGroup *group, const LbEntry *dive)
{
  const double bottom_s = lb_dive_bottom_time (dive);
  double depth_m = 0;
  LbNoStop limit;
  GtkWidget *box, *bar, *label;
  g_autofree char *said = NULL;

  if (isnan (bottom_s) || !lb_pneumo_corrected (dive->amount, &depth_m, NULL) ||
      !lb_no_stop_limit (depth_m, &limit, NULL))
    return gtk_label_new (_ ("no limit to compare with"));
  if (isinf (limit.limit_s))
    return gtk_label_new (_ ("no limit at this depth"));

  box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  bar = gtk_level_bar_new_for_interval (0, limit.limit_s);
  gtk_level_bar_set_value (GTK_LEVEL_BAR (bar), MIN (bottom_s, limit.limit_s));
  /* GTK paints a full bar as good news; here it is none. */
  gtk_level_bar_remove_offset_value (GTK_LEVEL_BAR (bar), GTK_LEVEL_BAR_OFFSET_LOW);
  gtk_level_bar_remove_offset_value (GTK_LEVEL_BAR (bar), GTK_LEVEL_BAR_OFFSET_HIGH);
  gtk_level_bar_remove_offset_value (GTK_LEVEL_BAR (bar), GTK_LEVEL_BAR_OFFSET_FULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (bar), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Bottom time against the no-stop limit"), -1);
  gtk_widget_set_size_request (bar, 96, -1);
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  said = g_strdup_printf (bottom_s > limit.limit_s
                            /* Translators: bottom time and no-stop limit, in minutes. */
                            ? _ ("%.0f min: PAST the limit of %.0f")
                            : _ ("%.0f of %.0f min"),
                          bottom_s / 60, limit.limit_s / 60);
  label = gtk_label_new (said);
  gtk_widget_add_css_class (label, "caption");
  if (bottom_s > limit.limit_s)
    gtk_widget_add_css_class (label, "error");
  gtk_box_append (GTK_BOX (box), bar);
  gtk_box_append (GTK_BOX (box), label);

  return box;
}

static void
lb_dive_group_update (LbShiftGroup *group)
{
  LbDiveGroup *self = LB_DIVE_GROUP (group);

  lb_shift_group_title_row (group, GTK_WIDGET (self->depth_row), _ ("Deepest by pneumo"),
                            LB_QUANTITY_LENGTH);
}

static void
lb_dive_group_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_DIVE_GROUP);

  G_OBJECT_CLASS (lb_dive_group_parent_class)->dispose (object);
}

static void
lb_dive_group_class_init (LbDiveGroupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  LbShiftGroupClass *group_class = LB_SHIFT_GROUP_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_dive_group_dispose;
  group_class->kinds = LB_ENTRY_KIND_BIT (LB_ENTRY_DIVE);
  group_class->update = lb_dive_group_update;
  group_class->suffix = lb_dive_group_suffix;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/dive-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, depth_row);
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, diver_row);
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, left_bottom_row);
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, left_surface_row);
  gtk_widget_class_bind_template_child (widget_class, LbDiveGroup, reached_surface_row);
  gtk_widget_class_bind_template_callback (widget_class, record_clicked_cb);
}

static void
lb_dive_group_init (LbDiveGroup *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
