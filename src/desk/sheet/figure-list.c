/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rows are made once, one a figure, and only their words change: the reader's place and focus
 * stay where they are. A reason is shown whole, on as many lines as it takes: it is what the figure
 * is checked by. */
#include "desk/sheet/figure-list.h"

#include "desk/basis/figure-window.h"
#include "desk/sheet/sheet-pile.h"
#include "draw/input-words.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct
{
  GtkWidget *row;
  GtkLabel *value;
  GtkLabel *range;
  GtkLabel *reason;
  GtkLabel *tag;
} FigureRow;

struct _LbFigureList
{
  GtkBox parent_instance;

  GtkWidget *lacks_box;
  GtkLabel *lacks_label;
  FigureRow rows[LB_N_FIGURES];

  LbJob *job; /* what is shown */
  guint pile;
};

G_DEFINE_FINAL_TYPE (LbFigureList, lb_figure_list, GTK_TYPE_BOX)

typedef struct
{
  const char *title;
  const LbFigureId *ids;
  gsize n_ids;
} Group;

static const LbFigureId where_ids[] = { LB_FIGURE_CUT_DEPTH, LB_FIGURE_TRUE_LENGTH, LB_FIGURE_LEAN,
                                        LB_FIGURE_HEAD_OFFSET, LB_FIGURE_CUT_OFFSET };
static const LbFigureId hold_ids[] = { LB_FIGURE_RIG_BEFORE, LB_FIGURE_HOLD_STRESS };
static const LbFigureId burn_ids[] = { LB_FIGURE_BARS_LEFT, LB_FIGURE_STEEL,
                                       LB_FIGURE_TRIGGER,   LB_FIGURE_BURN,
                                       LB_FIGURE_RODS,      LB_FIGURE_OXYGEN,
                                       LB_FIGURE_CYLINDERS, LB_FIGURE_REGULATOR,
                                       LB_FIGURE_HOSE_LOSS, LB_FIGURE_LEAD_DROP };
static const LbFigureId water_ids[] = { LB_FIGURE_PNEUMO, LB_FIGURE_NO_STOP, LB_FIGURE_HELMET,
                                        LB_FIGURE_DIVES };
static const LbFigureId lift_ids[] = {
  LB_FIGURE_CRITICAL,   LB_FIGURE_MASS_IN_WATER, LB_FIGURE_MASS_IN_AIR, LB_FIGURE_SUCTION,
  LB_FIGURE_AWASH,      LB_FIGURE_HOOK_LOAD,     LB_FIGURE_HEEL,        LB_FIGURE_CRANE_SHARE,
  LB_FIGURE_LENGTHS,    LB_FIGURE_PICK,          LB_FIGURE_SLING,       LB_FIGURE_SLING_SHARE,
  LB_FIGURE_WHOLE_PULL,
};

static const Group groups[] = {
  { N_ ("Where"), where_ids, G_N_ELEMENTS (where_ids) },
  { N_ ("Hold"), hold_ids, G_N_ELEMENTS (hold_ids) },
  { N_ ("Burn"), burn_ids, G_N_ELEMENTS (burn_ids) },
  { N_ ("Water"), water_ids, G_N_ELEMENTS (water_ids) },
  { N_ ("Lift"), lift_ids, G_N_ELEMENTS (lift_ids) },
};

static GtkLabel *
add_label (GtkWidget *box, const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static void
row_activated_cb (LbFigureList *self, GtkListBoxRow *row)
{
  if (self->job == NULL)
    return;
  for (int id = 0; id < LB_N_FIGURES; id++) {
    if (self->rows[id].row == GTK_WIDGET (row))
      gtk_window_present (GTK_WINDOW (
        lb_figure_window_new (GTK_WIDGET (self), self->job, self->pile, (LbFigureId) id)));
  }
}

static void
add_row (LbFigureList *self, GtkListBox *list, GtkSizeGroup *values, LbFigureId id)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *top = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkLabel *title = add_label (top, NULL);
  FigureRow *figure = &self->rows[id];

  *figure = (FigureRow){
    .row = row,
    .value = add_label (top, "strong"),
    .range = add_label (top, "dim-label"),
    .reason = add_label (foot, "dim-label"),
    .tag = add_label (foot, "tag"),
  };
  gtk_label_set_label (title, g_dgettext (GETTEXT_PACKAGE, lb_figure_title (id)));
  gtk_label_set_wrap (title, TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (title), TRUE);
  gtk_label_set_xalign (figure->value, 1);
  gtk_label_set_xalign (figure->range, 1);
  gtk_size_group_add_widget (values, GTK_WIDGET (figure->range));
  gtk_widget_set_hexpand (GTK_WIDGET (figure->reason), TRUE);
  gtk_label_set_wrap (figure->reason, TRUE);
  gtk_widget_set_valign (GTK_WIDGET (figure->tag), GTK_ALIGN_START);
  gtk_widget_add_css_class (GTK_WIDGET (figure->range), "numeric");
  gtk_widget_add_css_class (GTK_WIDGET (figure->value), "numeric");
  gtk_widget_add_css_class (GTK_WIDGET (figure->reason), "small");
  gtk_widget_add_css_class (row, "figure");

  gtk_box_append (GTK_BOX (box), top);
  gtk_box_append (GTK_BOX (box), foot);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_list_box_append (list, row);
}

static void
add_group (LbFigureList *self, const Group *group, GtkSizeGroup *values)
{
  GtkWidget *title = gtk_label_new (g_dgettext (GETTEXT_PACKAGE, group->title));
  GtkWidget *list = gtk_list_box_new ();

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "small-strong");
  gtk_widget_add_css_class (title, "dim-label");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (list, "figures");
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  g_dgettext (GETTEXT_PACKAGE, group->title), -1);
  g_signal_connect_swapped (list, "row-activated", G_CALLBACK (row_activated_cb), self);
  gtk_box_append (GTK_BOX (self), title);
  gtk_box_append (GTK_BOX (self), list);
  for (gsize i = 0; i < group->n_ids; i++)
    add_row (self, GTK_LIST_BOX (list), values, group->ids[i]);
}

static void
give_clicked_cb (LbFigureList *self)
{
  const guint32 lacks = self->job != NULL
                          ? lb_pile_lacks (&lb_job_get_fold (self->job)->piles[self->pile])
                          : 0;

  if (lacks != 0)
    gtk_widget_activate_action (GTK_WIDGET (self), "sheet.ask-fact", "i",
                                g_bit_nth_lsf (lacks, -1));
}

/* What is to be found out, with a way to where it is given. */
static void
add_lacks (LbFigureList *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
  GtkWidget *button = gtk_button_new_with_label (_ ("Give Them"));

  gtk_box_append (GTK_BOX (box), gtk_image_new_from_icon_name ("dialog-question-symbolic"));
  self->lacks_label = add_label (box, NULL);
  gtk_label_set_wrap (self->lacks_label, TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self->lacks_label), TRUE);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (give_clicked_cb), self);
  gtk_box_append (GTK_BOX (box), button);
  gtk_widget_add_css_class (box, "flag");
  gtk_box_append (GTK_BOX (self), box);
  self->lacks_box = box;
}

/* Nobody needs to know it of a pile that is out. */
static void
show_lacks (LbFigureList *self, const LbSheetPile *shown)
{
  g_autofree char *lacks = lb_pile_lacks_text (shown->pile);
  g_autofree char *words = NULL;

  gtk_widget_set_visible (self->lacks_box, lacks != NULL && shown->state->step != LB_STEP_PULLED);
  if (lacks == NULL)
    return;
  words = g_strdup_printf (_ ("To be found out: %s"), lacks);
  gtk_label_set_label (self->lacks_label, words);
}

static void
lb_figure_list_dispose (GObject *object)
{
  g_clear_object (&LB_FIGURE_LIST (object)->job);
  G_OBJECT_CLASS (lb_figure_list_parent_class)->dispose (object);
}

static void
lb_figure_list_class_init (LbFigureListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_figure_list_dispose;
}

static void
lb_figure_list_init (LbFigureList *self)
{
  g_autoptr (GtkSizeGroup) values = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 3);
  add_lacks (self);
  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    add_group (self, &groups[i], values);
}

static void
show_figure (FigureRow *figure, const LbSheetPile *shown, LbFigureId id)
{
  const LbFigure *reckoned = &shown->plan.figures[id];
  const gboolean is_known = !isnan (reckoned->range.likely);
  g_autofree char *value = lb_figure_text (shown->voice, &shown->plan, id);
  g_autofree char *range = lb_figure_range_text (shown->voice, &shown->plan, id);
  g_autofree char *reason = lb_figure_reason_text (shown->voice, shown->pile,
                                                   &shown->fold->assumptions, &shown->plan, id);
  const char *tag = is_known ? g_dgettext (GETTEXT_PACKAGE, lb_tag_name (reckoned->tag)) : "";
  g_autofree char *words = g_strjoin (", ", value, range != NULL ? range : tag,
                                      range != NULL ? tag : NULL, NULL);
  g_autofree char *name = g_strdup_printf (
    "%s: %s", g_dgettext (GETTEXT_PACKAGE, lb_figure_title (id)), words);

  gtk_widget_set_visible (figure->row, lb_cut_plan_tells (&shown->plan, id));
  gtk_label_set_label (figure->value, value);
  gtk_label_set_label (figure->range, range != NULL ? range : "");
  gtk_label_set_label (figure->reason, reason);
  gtk_label_set_label (figure->tag, tag);
  gtk_widget_set_visible (GTK_WIDGET (figure->tag), is_known);
  gtk_accessible_update_property (GTK_ACCESSIBLE (figure->row), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, reason, -1);
}

void
lb_figure_list_show (LbFigureList *self, LbJob *job, guint pile)
{
  LbSheetPile shown;

  g_return_if_fail (LB_IS_FIGURE_LIST (self));

  g_set_object (&self->job, job);
  self->pile = pile;
  if (job == NULL)
    return;
  lb_sheet_pile_load (&shown, job, pile);
  show_lacks (self, &shown);
  for (int id = 0; id < LB_N_FIGURES; id++)
    show_figure (&self->rows[id], &shown, (LbFigureId) id);
}
