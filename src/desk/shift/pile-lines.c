/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The piles worked in the shift, under the line to type them in. What does not fit together is said under
 * the line it is about, and blocks nothing: the record must be able to say what happened. */
#include "desk/shift/pile-lines.h"

#include "desk/shift/finding-rows.h"
#include "desk/shift/pile-form.h"
#include "draw/day-work.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>

/* Steps a person can say a pile reached. */
#define FIRST_STEP LB_STEP_CLEANED

struct _LbPileLines
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  LbPileForm *form;
  GtkListBox *lines_list;

  /* Owned */
  LbSelection *selection;
  GPtrArray *shown; /* what the lines say */
};

G_DEFINE_FINAL_TYPE (LbPileLines, lb_pile_lines, LB_TYPE_SHIFT_GROUP)

static const LbFold *
fold_of (LbPileLines *self)
{
  return lb_job_get_fold (lb_shift_group_get_job (LB_SHIFT_GROUP (self)));
}

static char *
work_text (LbPileLines *self, const LbPileWork *work)
{
  const LbVoice *voice = lb_job_get_voice (lb_shift_group_get_job (LB_SHIFT_GROUP (self)));
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  for (LbStep step = FIRST_STEP; step < LB_N_STEPS; step++) {
    if (work->steps & LB_STEP_BIT (step))
      g_ptr_array_add (parts, g_strdup (g_dgettext (GETTEXT_PACKAGE, lb_step_name (step))));
  }
  if (work->is_drawn)
    g_ptr_array_add (parts, g_strdup (_ ("drawn whole")));
  if (work->is_broken)
    g_ptr_array_add (parts, g_strdup (_ ("broke")));
  if (work->n_bars > 0)
    g_ptr_array_add (parts,
                     g_strdup_printf (ngettext ("%u bar", "%u bars", work->n_bars), work->n_bars));
  if (work->trigger_s > 0)
    g_ptr_array_add (parts, lb_voice_quantity (voice, LB_QUANTITY_TIME, work->trigger_s));
  if (work->rods > 0)
    g_ptr_array_add (
      parts, g_strdup_printf (ngettext ("%.0f rod", "%.0f rods", (gulong) work->rods), work->rods));
  if (work->oxygen_m3 > 0)
    g_ptr_array_add (parts, lb_voice_quantity (voice, LB_QUANTITY_GAS, work->oxygen_m3));
  if (work->notes->len > 0)
    g_ptr_array_add (parts, g_strdup (work->notes->str));
  g_ptr_array_add (parts, NULL);

  return g_strjoinv (" · ", (char **) parts->pdata);
}

typedef struct
{
  const GArray *works; /* LbPileWork, newest first */
  const GPtrArray *said;
  const LbFold *fold;
} Lines;

static GtkWidget *
make_line (guint index, gpointer data)
{
  const Lines *lines = data;
  const int pile = g_array_index (lines->works, LbPileWork, index).pile;
  AdwActionRow *row = ADW_ACTION_ROW (adw_action_row_new ());

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), lines->fold->piles[pile].mark);
  adw_action_row_set_subtitle (row, g_ptr_array_index (lines->said, index));
  adw_action_row_set_subtitle_lines (row, 0);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  gtk_widget_set_tooltip_text (GTK_WIDGET (row), _ ("Show this pile on the plan"));
  g_object_set_data (G_OBJECT (row), "pile", GINT_TO_POINTER (pile));

  return GTK_WIDGET (row);
}

static gboolean
is_of_line (const LbFinding *finding, guint index, gpointer data)
{
  const Lines *lines = data;

  return lb_finding_stands_at (finding) == LB_FINDING_AT_PILE &&
         finding->pile == g_array_index (lines->works, LbPileWork, index).pile;
}

static char *
line_text (LbPileLines *self, const LbPileWork *work)
{
  g_autofree char *done = work_text (self, work);

  if ((fold_of (self)->states[work->pile].flags & LB_FLAG_STUB_LEFT) == 0)
    return g_steal_pointer (&done);
  return g_strdup_printf ("%s\n⚠ %s", done, _ (lb_pile_flag_words (LB_FLAG_STUB_LEFT)));
}

/* The piles worked in @shift, none for -1. */
static void
show_lines (LbPileLines *self, int shift)
{
  LbJob *job = lb_shift_group_get_job (LB_SHIFT_GROUP (self));
  g_autoptr (GArray) works = g_array_new (FALSE, FALSE, sizeof (LbPileWork));
  g_autoptr (GPtrArray) said = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (LbDayWork) work = NULL;
  GPtrArray *keys = g_ptr_array_new_with_free_func (g_free);
  Lines lines = { .works = works, .said = said, .fold = fold_of (self) };

  if (shift >= 0)
    work = lb_day_work_new_of_shift (lb_job_get_voice (job), lb_job_get_ledger (job), lines.fold,
                                     shift);
  for (guint i = work != NULL ? work->piles->len : 0; i-- > 0;) {
    const LbPileWork *line = &g_array_index (work->piles, LbPileWork, i);

    if (line->pile < 0)
      continue;
    g_array_append_val (works, *line);
    g_ptr_array_add (said, line_text (self, line));
    g_ptr_array_add (keys,
                     g_strdup_printf ("%d %s %s", line->pile, lines.fold->piles[line->pile].mark,
                                      (const char *) g_ptr_array_index (said, said->len - 1)));
  }
  if (!lb_finding_rows_show (job, self->lines_list, &self->shown, keys, make_line, is_of_line,
                             &lines))
    gtk_widget_grab_focus (GTK_WIDGET (self->form));
}

static void
row_activated_cb (LbPileLines *self, GtkListBoxRow *row)
{
  if (self->selection == NULL)
    return;
  lb_selection_set_current (self->selection,
                            GPOINTER_TO_INT (g_object_get_data (G_OBJECT (row), "pile")));
  gtk_widget_activate_action (GTK_WIDGET (self), "win.page-plan", NULL);
}

static void
lb_pile_lines_update (LbShiftGroup *group)
{
  LbPileLines *self = LB_PILE_LINES (group);

  lb_pile_form_update (self->form, group);
  show_lines (self, lb_job_get_shift (lb_shift_group_get_job (group)));
}

static void
selection_changed_cb (LbSelection *selection, LbPileLines *self)
{
  gsize n;
  const guint *piles = lb_selection_get_piles (selection, &n);

  lb_pile_form_pick (self->form, piles, n);
}

static void
lb_pile_lines_dispose (GObject *object)
{
  LbPileLines *self = LB_PILE_LINES (object);

  g_clear_object (&self->selection);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_PILE_LINES);

  G_OBJECT_CLASS (lb_pile_lines_parent_class)->dispose (object);
}

static void
lb_pile_lines_finalize (GObject *object)
{
  LbPileLines *self = LB_PILE_LINES (object);

  g_ptr_array_unref (self->shown);

  G_OBJECT_CLASS (lb_pile_lines_parent_class)->finalize (object);
}

static void
lb_pile_lines_class_init (LbPileLinesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pile_lines_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_pile_lines_finalize;
  LB_SHIFT_GROUP_CLASS (klass)->update = lb_pile_lines_update;

  g_type_ensure (LB_TYPE_PILE_FORM);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/pile-lines.ui");
  gtk_widget_class_bind_template_child (widget_class, LbPileLines, form);
  gtk_widget_class_bind_template_child (widget_class, LbPileLines, lines_list);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
}

static void
lb_pile_lines_init (LbPileLines *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));

  self->shown = g_ptr_array_new_with_free_func (g_free);
}

void
lb_pile_lines_set_selection (LbPileLines *self, LbSelection *selection)
{
  g_return_if_fail (LB_IS_PILE_LINES (self));

  if (self->selection == selection)
    return;
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);
  g_set_object (&self->selection, selection);
  if (selection != NULL)
    g_signal_connect_object (selection, "changed", G_CALLBACK (selection_changed_cb), self, 0);
}
