/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Finding a pile by its mark.
 *
 * What is typed is compared as marks are (any case, no spaces). The mark itself comes first, then
 * marks that begin so, then marks that hold it. The rows below the entry are walked with the arrow
 * keys while the cursor stays in the entry; Enter goes to the row picked, or the first. */
#include "desk/plan/pile-finder.h"

#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

/* As many as can be looked over without scrolling. */
#define MATCHES_MOST 8

struct _LbPileFinder
{
  GtkWidget parent_instance;

  GtkWidget *entry;
  GtkWidget *popover;
  GtkWidget *rows; /* GtkListBox */
  LbJob *job;
  GArray *matches; /* guint, one a row */
};

G_DEFINE_FINAL_TYPE (LbPileFinder, lb_pile_finder, GTK_TYPE_WIDGET)

enum {
  FOUND,
  LEFT,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* How well a mark fits. */
typedef enum {
  FIT_ITSELF,
  FIT_BEGINNING,
  FIT_PART,
  FIT_NONE,
} Fit;

static Fit
fit_of (const char *mark, const char *typed)
{
  g_autofree char *key = lb_mark_key (mark);

  if (g_str_equal (key, typed))
    return FIT_ITSELF;
  if (g_str_has_prefix (key, typed))
    return FIT_BEGINNING;
  return strstr (key, typed) != NULL ? FIT_PART : FIT_NONE;
}

static void
find_matches (LbPileFinder *self)
{
  const LbFold *fold = self->job != NULL ? lb_job_get_fold (self->job) : NULL;
  g_autofree char *typed = lb_mark_key (gtk_editable_get_text (GTK_EDITABLE (self->entry)));

  g_array_set_size (self->matches, 0);
  if (fold == NULL || *typed == '\0')
    return;
  for (Fit fit = FIT_ITSELF; fit < FIT_NONE; fit++)
    for (guint i = 0; i < fold->n_piles && self->matches->len < MATCHES_MOST; i++)
      if (fit_of (fold->piles[i].mark, typed) == fit)
        g_array_append_val (self->matches, i);
}

static void
append_row (LbPileFinder *self, guint pile)
{
  const LbFold *fold = lb_job_get_fold (self->job);
  g_autofree char *state = lb_pile_state_text (&fold->piles[pile], &fold->states[pile]);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *mark_label = gtk_label_new (fold->piles[pile].mark);
  GtkWidget *state_label = gtk_label_new (state);

  gtk_widget_add_css_class (mark_label, "strong");
  gtk_widget_add_css_class (state_label, "dim-label");
  gtk_widget_set_hexpand (state_label, TRUE);
  gtk_label_set_xalign (GTK_LABEL (state_label), 1);
  gtk_box_append (GTK_BOX (row), mark_label);
  gtk_box_append (GTK_BOX (row), state_label);
  gtk_list_box_append (GTK_LIST_BOX (self->rows), row);
}

static void
changed_cb (LbPileFinder *self)
{
  const gboolean is_empty = *gtk_editable_get_text (GTK_EDITABLE (self->entry)) == '\0';
  GtkWidget *row;

  find_matches (self);
  while ((row = gtk_widget_get_first_child (self->rows)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->rows), row);
  for (guint i = 0; i < self->matches->len; i++)
    append_row (self, g_array_index (self->matches, guint, i));
  gtk_list_box_select_row (GTK_LIST_BOX (self->rows),
                           gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->rows), 0));
  /* The entry says "search-changed" a moment late, when Enter may have closed the finder. */
  if (self->matches->len > 0 &&
      (gtk_widget_get_state_flags (self->entry) & GTK_STATE_FLAG_FOCUS_WITHIN))
    gtk_popover_popup (GTK_POPOVER (self->popover));
  else
    gtk_popover_popdown (GTK_POPOVER (self->popover));

  if (self->matches->len > 0 || is_empty)
    gtk_widget_remove_css_class (self->entry, "error");
  else
    gtk_widget_add_css_class (self->entry, "error");
  gtk_widget_set_tooltip_text (
    self->entry, self->matches->len > 0 || is_empty ? NULL : _ ("No pile is called that."));
}

static void
go_to_row (LbPileFinder *self, GtkListBoxRow *row)
{
  guint pile;

  if (row == NULL || gtk_list_box_row_get_index (row) >= (int) self->matches->len)
    return;
  pile = g_array_index (self->matches, guint, (guint) gtk_list_box_row_get_index (row));
  gtk_popover_popdown (GTK_POPOVER (self->popover));
  g_signal_emit (self, signals[FOUND], 0, (int) pile);
}

static void
activate_cb (LbPileFinder *self)
{
  /* The entry waits a moment before it says "search-changed"; Enter may be faster. */
  changed_cb (self);
  go_to_row (self, gtk_list_box_get_selected_row (GTK_LIST_BOX (self->rows)));
}

static void
row_activated_cb (LbPileFinder *self, GtkListBoxRow *row)
{
  go_to_row (self, row);
}

static void
leave (LbPileFinder *self)
{
  gtk_popover_popdown (GTK_POPOVER (self->popover));
  g_signal_emit (self, signals[LEFT], 0);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint key,
                guint code,
                GdkModifierType state,
                LbPileFinder *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->rows));
  const int at = row != NULL ? gtk_list_box_row_get_index (row) : 0;
  const int step = key == GDK_KEY_Down ? 1 : key == GDK_KEY_Up ? -1 : 0;

  if (step == 0 || self->matches->len == 0)
    return GDK_EVENT_PROPAGATE;
  gtk_list_box_select_row (
    GTK_LIST_BOX (self->rows),
    gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->rows),
                                   CLAMP (at + step, 0, (int) self->matches->len - 1)));
  return GDK_EVENT_STOP;
}

static void
lb_pile_finder_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  LbPileFinder *self = LB_PILE_FINDER (widget);

  gtk_widget_allocate (self->entry, width, height, baseline, NULL);
  gtk_popover_present (GTK_POPOVER (self->popover));
}

static void
lb_pile_finder_measure (GtkWidget *widget,
                        GtkOrientation orientation,
                        int for_size,
                        int *minimum,
                        int *natural,
                        int *minimum_baseline,
                        int *natural_baseline)
{
  gtk_widget_measure (LB_PILE_FINDER (widget)->entry, orientation, for_size, minimum, natural,
                      minimum_baseline, natural_baseline);
}

static void
lb_pile_finder_dispose (GObject *object)
{
  LbPileFinder *self = LB_PILE_FINDER (object);

  g_clear_pointer (&self->popover, gtk_widget_unparent);
  g_clear_pointer (&self->entry, gtk_widget_unparent);
  g_clear_object (&self->job);
  G_OBJECT_CLASS (lb_pile_finder_parent_class)->dispose (object);
}

static void
lb_pile_finder_finalize (GObject *object)
{
  g_array_unref (LB_PILE_FINDER (object)->matches);
  G_OBJECT_CLASS (lb_pile_finder_parent_class)->finalize (object);
}

static void
lb_pile_finder_class_init (LbPileFinderClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pile_finder_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_pile_finder_finalize;
  widget_class->measure = lb_pile_finder_measure;
  widget_class->size_allocate = lb_pile_finder_size_allocate;

  signals[FOUND] = g_signal_new ("found", LB_TYPE_PILE_FINDER, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  signals[LEFT] = g_signal_new ("left", LB_TYPE_PILE_FINDER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
}

static void
lb_pile_finder_init (LbPileFinder *self)
{
  GtkEventController *key = gtk_event_controller_key_new ();

  self->matches = g_array_new (FALSE, FALSE, sizeof (guint));
  self->entry = gtk_search_entry_new ();
  g_object_set (self->entry, "placeholder-text", _ ("Pile’s mark"), NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Find a pile"), -1);
  gtk_widget_set_parent (self->entry, GTK_WIDGET (self));
  g_signal_connect_swapped (self->entry, "search-changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (self->entry, "stop-search", G_CALLBACK (leave), self);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (self->entry, key);

  self->rows = gtk_list_box_new ();
  gtk_widget_set_size_request (self->rows, 260, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->rows), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Piles that fit"), -1);
  g_signal_connect_swapped (self->rows, "row-activated", G_CALLBACK (row_activated_cb), self);
  self->popover = gtk_popover_new ();
  gtk_popover_set_child (GTK_POPOVER (self->popover), self->rows);
  gtk_popover_set_autohide (GTK_POPOVER (self->popover), FALSE);
  gtk_popover_set_has_arrow (GTK_POPOVER (self->popover), FALSE);
  gtk_popover_set_position (GTK_POPOVER (self->popover), GTK_POS_BOTTOM);
  gtk_widget_set_can_focus (self->popover, FALSE);
  gtk_widget_set_parent (self->popover, GTK_WIDGET (self));
}

void
lb_pile_finder_set_job (LbPileFinder *self, LbJob *job)
{
  g_return_if_fail (LB_IS_PILE_FINDER (self));

  g_set_object (&self->job, job);
}

void
lb_pile_finder_begin (LbPileFinder *self)
{
  g_return_if_fail (LB_IS_PILE_FINDER (self));

  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  gtk_widget_grab_focus (self->entry);
}
