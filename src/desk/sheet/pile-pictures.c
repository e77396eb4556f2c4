/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A bar that is touched is recorded as burned at once; one that was burned before is never taken
 * back by a touch alone: the toast offers it where it was the last thing recorded, and says where
 * to do it otherwise. While the section looks ahead along the order, a touch records nothing.
 */
#include "desk/sheet/pile-pictures.h"

#include "book/clock-text.h"
#include "desk/sheet/bars-popover.h"
#include "desk/sheet/section-steps.h"
#include "desk/sheet/section-view.h"
#include "desk/sheet/sheet-pile.h"
#include "desk/sheet/side-view.h"
#include "desk/shell/say.h"
#include "draw/plan-words.h"
#include "draw/section.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

struct _LbPilePictures
{
  GtkBox parent_instance;

  /* Template widgets */
  LbBarsPopover *bars_popover;
  GtkBox *buttons_box;
  GtkWidget *count_button;
  GtkWidget *next_button;
  GtkBox *pictures_box;
  LbSectionSteps *section_steps;
  LbSectionView *section_view;
  LbSideView *side_view;

  LbJob *job;
  guint pile;
};

G_DEFINE_FINAL_TYPE (LbPilePictures, lb_pile_pictures, GTK_TYPE_BOX)

static void
burn (LbPilePictures *self, guint bar)
{
  g_autofree char *words = NULL;
  GError *error = NULL;
  LbSheetPile shown;

  if (!lb_job_burn_bars (self->job, self->pile, LB_BAR (bar), &error)) {
    lb_say_error (GTK_WIDGET (self), _ ("The bar was not recorded"), error);
    return;
  }
  lb_sheet_pile_load (&shown, self->job, self->pile);
  words = g_strdup_printf (shown.state->n_left > 0
                             ? _ ("Bar %u burned")
                             : _ ("Bar %u burned, the last one: the pile is severed"),
                           bar + 1);
  lb_say (GTK_WIDGET (self), words, TRUE);
}

/* The entry that stands and says @bar was burned or found gone, NULL when none does. */
static const LbEntry *
find_burned (LbPilePictures *self, guint bar)
{
  const LbLedger *ledger = lb_job_get_ledger (self->job);
  const LbFold *fold = lb_job_get_fold (self->job);

  for (gsize i = fold->n_entries; i-- > 0;) {
    const LbEntry *entry = lb_ledger_entry (ledger, (guint) i);

    if (fold->is_alive[i] && (entry->kind == LB_ENTRY_BARS || entry->kind == LB_ENTRY_GONE) &&
        entry->pile == (int) self->pile && (entry->bars & LB_BAR (bar)))
      return entry;
  }
  return NULL;
}

static void
explain_burned (LbPilePictures *self, guint bar)
{
  const LbEntry *entry = find_burned (self, bar);
  const char *last = lb_fold_next_take_back (
    lb_job_get_fold (self->job), lb_job_get_ledger (self->job), lb_job_get_shift (self->job));
  const gboolean is_last = entry != NULL && g_strcmp0 (entry->act, last) == 0;
  g_autofree char *at = entry != NULL ? lb_clock_to_text (entry->at_us) : g_strdup ("–");
  g_autofree char *words = NULL;

  const gboolean is_gone = entry != NULL && entry->kind == LB_ENTRY_GONE;
  g_autofree char *what = is_gone
                            ? g_strdup_printf (_ ("Bar %u was found gone, recorded %s"), bar + 1,
                                               at)
                            : g_strdup_printf (_ ("Bar %u was burned, recorded %s"), bar + 1, at);

  words = is_last ? g_steal_pointer (&what)
                  : g_strdup_printf (
                      _ ("%s; other work was recorded since. To take it back, find it in the "
                         "history below"),
                      what);
  lb_say (GTK_WIDGET (self), words, is_last);
}

static void
touched_cb (LbPilePictures *self, int bar)
{
  LbSheetPile shown;

  lb_sheet_pile_load (&shown, self->job, self->pile);
  if (lb_section_view_get_step (self->section_view) > 0)
    lb_say (GTK_WIDGET (self),
            _ ("Nothing was recorded: the section looks ahead. Step back to how the pile stands, "
               "then touch the bar"),
            FALSE);
  else if (shown.state->burned & LB_BAR (bar))
    explain_burned (self, (guint) bar);
  else if (shown.state->n_left == 0)
    lb_say (GTK_WIDGET (self), _ ("All bars of this pile are burned already"), FALSE);
  else
    burn (self, (guint) bar);
}

/* What else can be said of a bar is asked where bars are counted. */
static void
asked_cb (LbPilePictures *self, int bar)
{
  if (!gtk_widget_is_sensitive (self->count_button))
    return;
  gtk_menu_button_popup (GTK_MENU_BUTTON (self->count_button));
  lb_bars_popover_ask_gone (self->bars_popover, (guint) bar);
}

static void
next_cb (LbPilePictures *self)
{
  LbSheetPile shown;

  lb_sheet_pile_load (&shown, self->job, self->pile);
  if (shown.plan.n_order > 0)
    burn (self, shown.plan.order[0]);
}

/* Says which one the next is. */
static void
show_next (LbPilePictures *self)
{
  g_autofree char *words = NULL;
  LbSheetPile shown;

  lb_sheet_pile_load (&shown, self->job, self->pile);
  if (!lb_section_tells_order (shown.pile))
    words = g_strdup (_ ("Stressed strand has no order here: touch the one that was burned"));
  else if (shown.plan.n_order > 0)
    words = g_strdup_printf (_ ("Record bar %u, the next in the order, as burned"),
                             shown.plan.order[0] + 1u);
  gtk_widget_set_tooltip_text (self->next_button, words);
}

static void
lb_pile_pictures_dispose (GObject *object)
{
  g_clear_object (&LB_PILE_PICTURES (object)->job);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_PILE_PICTURES);
  G_OBJECT_CLASS (lb_pile_pictures_parent_class)->dispose (object);
}

static void
lb_pile_pictures_class_init (LbPilePicturesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pile_pictures_dispose;
  g_type_ensure (LB_TYPE_BARS_POPOVER);
  g_type_ensure (LB_TYPE_SECTION_STEPS);
  g_type_ensure (LB_TYPE_SECTION_VIEW);
  g_type_ensure (LB_TYPE_SIDE_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/pile-pictures.ui");
  gtk_widget_class_bind_template_child (widget_class, LbPilePictures, bars_popover);
  gtk_widget_class_bind_template_child (widget_class, LbPilePictures, buttons_box);
  gtk_widget_class_bind_template_child (widget_class, LbPilePictures, count_button);
  gtk_widget_class_bind_template_child (widget_class, LbPilePictures, next_button);
  gtk_widget_class_bind_template_child (widget_class, LbPilePictures, pictures_box);
  gtk_widget_class_bind_template_child (widget_class, LbPilePictures, section_steps);
  gtk_widget_class_bind_template_child (widget_class, LbPilePictures, section_view);
  gtk_widget_class_bind_template_child (widget_class, LbPilePictures, side_view);
  gtk_widget_class_bind_template_callback (widget_class, asked_cb);
  gtk_widget_class_bind_template_callback (widget_class, next_cb);
  gtk_widget_class_bind_template_callback (widget_class, touched_cb);
}

static void
lb_pile_pictures_init (LbPilePictures *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
lb_pile_pictures_show (LbPilePictures *self, LbJob *job, guint pile)
{
  g_return_if_fail (LB_IS_PILE_PICTURES (self));

  g_set_object (&self->job, job);
  self->pile = pile;
  lb_side_view_show (self->side_view, job, pile);
  lb_section_view_show (self->section_view, job, pile);
  lb_section_steps_show (self->section_steps, self->section_view, job, pile);
  lb_bars_popover_show (self->bars_popover, job, pile);
  if (job == NULL)
    return;

  const LbPileState *state = &lb_job_get_fold (job)->states[pile];
  const gboolean can_burn = state->n_left > 0 && !lb_job_is_read_only (job);

  lb_sheet_pile_turn (self->pictures_box, job);
  lb_sheet_pile_turn (self->buttons_box, job);
  gtk_widget_set_sensitive (
    self->next_button, can_burn && lb_section_tells_order (&lb_job_get_fold (job)->piles[pile]));
  show_next (self);
  gtk_widget_set_sensitive (self->count_button, can_burn);
}
