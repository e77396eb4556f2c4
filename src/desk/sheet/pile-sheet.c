/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sheet: head, parts, foot.
 *
 * Purpose: one pile in full, or several in sum.
 * Data: job and selection, both shared with the window; the sheet keeps nothing of the job but
 * what its widgets show. Each part has a function "show" that is called after every change and
 * touches only what differs, so that the reader's place, the focus and what is half typed stay.
 *
 * Invariant: "piles" is what the parts show. It follows the selection only after what stands typed
 * for the pile before has been stored.
 */
#include "desk/sheet/pile-sheet.h"

#include "desk/sheet/assumption-row.h"
#include "desk/sheet/dive-checks.h"
#include "desk/sheet/fact-group.h"
#include "desk/sheet/figure-list.h"
#include "desk/sheet/history-list.h"
#include "desk/sheet/pile-pictures.h"
#include "desk/sheet/pile-steps.h"
#include "desk/sheet/sheet-pile.h"
#include "desk/sheet/visibility-row.h"
#include "desk/shell/look.h"
#include "draw/finding-words.h"
#include "draw/plan-words.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

/* WCAG 2.2, success criterion 1.4.3: text against its ground. */
#define TEXT_CONTRAST 4.5

struct _LbPileSheet
{
  LbJobPage parent_instance;

  /* Template widgets */
  LbDiveChecks *checks;
  GtkWidget *checks_part; /* with its title */
  LbFactGroup *facts;
  LbFigureList *figures;
  GtkBox *flags_box;
  GtkWidget *foot;
  LbHistoryList *history;
  GtkLabel *mark_label;
  GtkLabel *pile_label;
  LbPilePictures *pictures;
  GtkStack *stack;
  GtkLabel *state_label;
  LbPileSteps *steps;
  LbPileSteps *sum_steps;
  GtkLabel *sum_label;
  GtkLabel *sum_title;
  GtkScrolledWindow *scroller;
  GtkListBox *water_list;

  LbAssumptionRow *water_row;      /* in water_list, */
  LbVisibilityRow *visibility_row; /* and so is this */

  /* Owned */
  GArray *piles; /* guint: those shown */
};

G_DEFINE_FINAL_TYPE (LbPileSheet, lb_pile_sheet, LB_TYPE_JOB_PAGE)

static LbJob *
job_of (LbPileSheet *self)
{
  return lb_job_page_get_job (LB_JOB_PAGE (self));
}

static guint
pile_at (LbPileSheet *self, guint i)
{
  return g_array_index (self->piles, guint, i);
}

static LbInk
step_ink (LbStep step)
{
  switch (step) {
  case LB_STEP_CLEANED:
    return LB_INK_CLEANED;
  case LB_STEP_SEVERED:
    return LB_INK_SEVERED;
  case LB_STEP_RIGGED:
    return LB_INK_RIGGED;
  case LB_STEP_PULLED:
    return LB_INK_PULLED;
  case LB_STEP_STANDING:
  default:
    return LB_INK_STANDING;
  }
}

/* In the step's ink where that is dark enough to be read, else in the text's: the inks of the
 * marks need less contrast than words do. */
static void
ink_state (LbPileSheet *self)
{
  const LbPalette *palette = lb_look_palette (GTK_WIDGET (self));
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();
  const LbColour *ink;

  if (job_of (self) == NULL || self->piles->len != 1)
    return;
  ink = &palette->inks[step_ink (lb_job_get_fold (job_of (self))->states[pile_at (self, 0)].step)];
  if (lb_colour_contrast (ink, &palette->inks[LB_INK_PAPER]) < TEXT_CONTRAST)
    ink = &palette->inks[LB_INK_TEXT];
  pango_attr_list_insert (attributes, pango_attr_foreground_new ((guint16) (ink->r * G_MAXUINT16),
                                                                 (guint16) (ink->g * G_MAXUINT16),
                                                                 (guint16) (ink->b * G_MAXUINT16)));
  gtk_label_set_attributes (self->state_label, attributes);
}

/* What somebody said to a flag, NULL for nothing. */
static char *
find_answer (const GArray *findings, LbPileFlag flag)
{
  for (guint i = 0; i < findings->len; i++) {
    const LbFinding *finding = &g_array_index (findings, LbFinding, i);

    if ((finding->kind == LB_FINDING_BARS_LEFT && flag == LB_FLAG_SEVERED_WITH_BARS) ||
        (finding->kind == LB_FINDING_PULLED_UNCUT && flag == LB_FLAG_PULLED_UNSEVERED) ||
        (finding->kind == LB_FINDING_MORE_BARS && flag == LB_FLAG_MORE_BARS_THAN_HAS) ||
        (finding->kind == LB_FINDING_GONE_AND_BURNED && flag == LB_FLAG_GONE_AND_BURNED))
      return lb_finding_answer_text (finding);
  }
  return NULL;
}

static void
add_flag (LbPileSheet *self, LbPileFlag flag, const char *answer)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
  GtkWidget *icon = gtk_image_new_from_icon_name (answer != NULL ? "emblem-ok-symbolic"
                                                                 : "dialog-question-symbolic");
  const char *words = g_dgettext (GETTEXT_PACKAGE, lb_pile_flag_words (flag));
  g_autofree char *both = answer != NULL ? g_strdup_printf ("%s\n%s", words, answer) : NULL;
  GtkWidget *label = gtk_label_new (both != NULL ? both : words);

  gtk_widget_set_valign (icon, GTK_ALIGN_START);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_box_append (GTK_BOX (box), icon);
  gtk_box_append (GTK_BOX (box), label);
  gtk_widget_add_css_class (box, "flag");
  gtk_box_append (self->flags_box, box);
}

static void
show_flags (LbPileSheet *self, guint index, guint flags)
{
  g_autoptr (GArray) findings = NULL;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->flags_box))) != NULL)
    gtk_box_remove (self->flags_box, child);
  if (flags != 0)
    findings = lb_findings_new_of_pile (lb_job_get_ledger (job_of (self)),
                                        lb_job_get_fold (job_of (self)), (int) index);
  for (guint flag = 1; flag <= LB_FLAG_LAST; flag <<= 1) {
    if (flags & flag) {
      g_autofree char *answer = find_answer (findings, (LbPileFlag) flag);

      add_flag (self, (LbPileFlag) flag, answer);
    }
  }
  gtk_widget_set_visible (GTK_WIDGET (self->flags_box), flags != 0);
}

static void
show_head (LbPileSheet *self, guint index)
{
  LbSheetPile shown;

  lb_sheet_pile_load (&shown, job_of (self), index);

  g_autofree char *state = lb_pile_state_text (shown.pile, shown.state);
  g_autofree char *pile = lb_pile_text (shown.voice, shown.pile);

  gtk_label_set_label (self->mark_label, shown.pile->mark);
  gtk_label_set_label (self->state_label, state);
  gtk_label_set_label (self->pile_label, pile);
  show_flags (self, index, shown.state->flags);
  ink_state (self);
}

static void
show_one (LbPileSheet *self)
{
  const guint pile = pile_at (self, 0);

  show_head (self, pile);
  lb_pile_pictures_show (self->pictures, job_of (self), pile);
  lb_pile_steps_show (self->steps, job_of (self), &pile, 1);
  lb_assumption_row_show (self->water_row, job_of (self));
  lb_visibility_row_show (self->visibility_row, job_of (self));
  lb_figure_list_show (self->figures, job_of (self), pile);
  lb_dive_checks_show (self->checks, job_of (self), pile);
  lb_fact_group_show (self->facts, job_of (self), pile);
  lb_history_list_show (self->history, job_of (self), pile);
}

/* "31 bars left", and the piles by step. */
static char *
sum_words (LbPileSheet *self)
{
  const LbFold *fold = lb_job_get_fold (job_of (self));
  GString *words = g_string_new (NULL);
  guint n_by_step[LB_N_STEPS] = { 0 };
  guint n_left = 0;

  for (guint i = 0; i < self->piles->len; i++) {
    const LbPileState *state = &fold->states[pile_at (self, i)];

    n_by_step[state->step]++;
    n_left += state->n_left;
  }
  g_string_append_printf (
    words, g_dngettext (GETTEXT_PACKAGE, "%u bar left", "%u bars left", n_left), n_left);
  for (LbStep step = LB_STEP_STANDING; step < LB_N_STEPS; step++) {
    if (n_by_step[step] > 0)
      g_string_append_printf (words, "\n%u %s", n_by_step[step],
                              g_dgettext (GETTEXT_PACKAGE, lb_step_name (step)));
  }
  return g_string_free (words, FALSE);
}

static void
show_several (LbPileSheet *self)
{
  g_autofree char *words = sum_words (self);
  g_autofree char *title = g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%u pile picked", "%u piles picked", self->piles->len),
    self->piles->len);

  gtk_label_set_label (self->sum_title, title);
  gtk_label_set_label (self->sum_label, words);
  lb_pile_steps_show (self->sum_steps, job_of (self), (const guint *) (gpointer) self->piles->data,
                      self->piles->len);
}

static void
lb_pile_sheet_job_changed (LbJobPage *page)
{
  LbPileSheet *self = LB_PILE_SHEET (page);
  const guint n = job_of (self) != NULL ? self->piles->len : 0;

  gtk_widget_set_visible (GTK_WIDGET (self->stack), n > 0);
  gtk_widget_set_visible (self->foot, n > 0);
  if (n > 0)
    gtk_stack_set_visible_child_name (self->stack, n == 1 ? "one" : "several");
  if (n == 1)
    show_one (self);
  else if (n > 1)
    show_several (self);
}

/* What the parts hold of a job that goes. */
static void
forget_job (LbPileSheet *self)
{
  lb_pile_pictures_show (self->pictures, NULL, 0);
  lb_pile_steps_show (self->steps, NULL, NULL, 0);
  lb_pile_steps_show (self->sum_steps, NULL, NULL, 0);
  lb_assumption_row_show (self->water_row, NULL);
  lb_visibility_row_show (self->visibility_row, NULL);
  lb_dive_checks_show (self->checks, NULL, 0);
  lb_fact_group_show (self->facts, NULL, 0);
  lb_figure_list_show (self->figures, NULL, 0);
  lb_history_list_show (self->history, NULL, 0);
}

static void
lb_pile_sheet_selection_changed (LbJobPage *page)
{
  LbPileSheet *self = LB_PILE_SHEET (page);
  LbSelection *selection = lb_job_page_get_selection (page);
  const guint n_piles = job_of (self) != NULL ? lb_job_get_fold (job_of (self))->n_piles : 0;
  const int before = self->piles->len == 1 ? (int) pile_at (self, 0) : -1;
  const guint *piles = NULL;
  gsize n = 0;

  lb_fact_group_commit (self->facts);
  if (selection != NULL)
    piles = lb_selection_get_piles (selection, &n);
  g_array_set_size (self->piles, 0);
  for (gsize i = 0; i < n; i++) {
    if (piles[i] < n_piles)
      g_array_append_val (self->piles, piles[i]);
  }
  lb_pile_sheet_job_changed (page);
  if (self->piles->len != 1 || (int) pile_at (self, 0) != before)
    gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
}

static void
lb_pile_sheet_job_set (LbJobPage *page)
{
  LbPileSheet *self = LB_PILE_SHEET (page);

  lb_fact_group_commit (self->facts);
  forget_job (self);
  g_array_set_size (self->piles, 0);
  lb_pile_sheet_selection_changed (page);
}

static void
lb_pile_sheet_dispose (GObject *object)
{
  LbPileSheet *self = LB_PILE_SHEET (object);

  lb_job_page_leave (LB_JOB_PAGE (self));
  gtk_widget_dispose_template (GTK_WIDGET (self), LB_TYPE_PILE_SHEET);
  g_clear_pointer (&self->piles, g_array_unref);
  G_OBJECT_CLASS (lb_pile_sheet_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  g_type_ensure (LB_TYPE_DIVE_CHECKS);
  g_type_ensure (LB_TYPE_FACT_GROUP);
  g_type_ensure (LB_TYPE_FIGURE_LIST);
  g_type_ensure (LB_TYPE_HISTORY_LIST);
  g_type_ensure (LB_TYPE_PILE_PICTURES);
  g_type_ensure (LB_TYPE_PILE_STEPS);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/pile-sheet.ui");
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, checks);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, checks_part);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, facts);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, figures);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, flags_box);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, foot);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, history);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, mark_label);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, pictures);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, pile_label);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, scroller);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, stack);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, state_label);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, steps);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, sum_label);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, sum_steps);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, sum_title);
  gtk_widget_class_bind_template_child (widget_class, LbPileSheet, water_list);
}

/* A figure that is opened asks for a fact. */
static void
ask_fact_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  lb_fact_group_ask (LB_PILE_SHEET (widget)->facts, (LbFact) g_variant_get_int32 (parameter));
}

static void
lb_pile_sheet_class_init (LbPileSheetClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  LbJobPageClass *page_class = LB_JOB_PAGE_CLASS (klass);

  object_class->dispose = lb_pile_sheet_dispose;
  page_class->job_changed = lb_pile_sheet_job_changed;
  page_class->job_set = lb_pile_sheet_job_set;
  page_class->selection_changed = lb_pile_sheet_selection_changed;
  page_class->selection_set = lb_pile_sheet_selection_changed;

  bind_template (widget_class);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_css_name (widget_class, "pilesheet");
  gtk_widget_class_install_action (widget_class, "sheet.ask-fact", "i", ask_fact_cb);
}

static void
lb_pile_sheet_init (LbPileSheet *self)
{
  AdwStyleManager *style = adw_style_manager_get_default ();

  self->piles = g_array_new (FALSE, FALSE, sizeof (guint));

  gtk_widget_init_template (GTK_WIDGET (self));
  self->water_row = lb_assumption_row_new (LB_ASSUME_WATER_LEVEL);
  gtk_list_box_append (self->water_list, GTK_WIDGET (self->water_row));
  gtk_list_box_append (self->water_list,
                       lb_checked_row_get_note_row (LB_CHECKED_ROW (self->water_row)));
  self->visibility_row = lb_visibility_row_new ();
  gtk_list_box_append (self->water_list, GTK_WIDGET (self->visibility_row));
  g_signal_connect_object (style, "notify::dark", G_CALLBACK (ink_state), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (style, "notify::high-contrast", G_CALLBACK (ink_state), self,
                           G_CONNECT_SWAPPED);
  lb_pile_sheet_job_changed (LB_JOB_PAGE (self));
}

void
lb_pile_sheet_show_checks (LbPileSheet *self, const char *dive_id)
{
  GtkWidget *page = gtk_widget_get_parent (self->checks_part);
  graphene_rect_t bounds;

  g_return_if_fail (LB_IS_PILE_SHEET (self));

  if (self->piles->len != 1)
    return;
  lb_dive_checks_pick (self->checks, dive_id);
  gtk_widget_child_focus (GTK_WIDGET (self->checks), GTK_DIR_TAB_FORWARD);
  if (gtk_widget_compute_bounds (self->checks_part, page, &bounds))
    gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller),
                              (double) bounds.origin.y);
}
