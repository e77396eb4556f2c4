/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The page holds the groups together and knows which shift the sheet is of; the shift itself is
 * the job's. The drop-down lists shifts newest first, so its position counts from the end. */
#include "desk/shift/shift-page.h"

#include "desk/shell/say.h"
#include "desk/shell/selection.h"
#include "desk/shift/conditions-group.h"
#include "desk/shift/crew-group.h"
#include "desk/shift/dive-group.h"
#include "desk/shift/finding-group.h"
#include "desk/shift/lost-group.h"
#include "desk/shift/notes-group.h"
#include "desk/shift/pile-lines.h"
#include "desk/shift/sign-bar.h"
#include "desk/shift/used-group.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

struct _LbShiftPage
{
  LbJobPage parent_instance;

  /* Template widgets */
  GtkCalendar *calendar;
  LbConditionsGroup *conditions_group;
  LbCrewGroup *crew_group;
  LbDiveGroup *dive_group;
  LbFindingGroup *finding_group;
  LbLostGroup *lost_group;
  LbNotesGroup *notes_group;
  GtkMenuButton *open_button;
  GtkPopover *open_popover;
  LbPileLines *pile_lines;
  GtkDropDown *shift_drop;
  LbSignBar *sign_bar;
  GtkButton *sign_button;
  GtkLabel *sums_label;
  LbUsedGroup *used_group;

  /* State */
  gboolean is_updating;
};

G_DEFINE_FINAL_TYPE (LbShiftPage, lb_shift_page, LB_TYPE_JOB_PAGE)

static LbJob *
job_of (LbShiftPage *self)
{
  return lb_job_page_get_job (LB_JOB_PAGE (self));
}

static char *
shift_text (const LbShift *shift, guint number)
{
  g_autofree char *day = lb_day_text (shift->day);

  return g_strdup_printf (g_str_equal (shift->watch, "night")
                            /* Translators: number and day of a shift. */
                            ? _ ("Shift %u · %s · night")
                            : _ ("Shift %u · %s · day"),
                          number, day);
}

/* While today's shift is not open it stands first in the list, without a number. */
static guint
n_before_shifts (LbShiftPage *self)
{
  return lb_job_get_shift_of_today (job_of (self)) < 0 ? 1 : 0;
}

static GListModel *
make_names (LbShiftPage *self)
{
  const LbLedger *ledger = lb_job_get_ledger (job_of (self));
  GtkStringList *names = gtk_string_list_new (NULL);

  if (n_before_shifts (self) > 0)
    gtk_string_list_append (names, _ ("Today, not open yet"));
  for (guint i = ledger->shifts->len; i-- > 0;) {
    g_autofree char *name = shift_text (lb_ledger_shift (ledger, i), i + 1);
    gtk_string_list_append (names, name);
  }
  return G_LIST_MODEL (names);
}

static gboolean
is_same_list (GListModel *a, GListModel *b)
{
  const guint n = g_list_model_get_n_items (b);

  if (a == NULL || g_list_model_get_n_items (a) != n)
    return FALSE;
  for (guint i = 0; i < n; i++) {
    if (strcmp (gtk_string_list_get_string (GTK_STRING_LIST (a), i),
                gtk_string_list_get_string (GTK_STRING_LIST (b), i)) != 0)
      return FALSE;
  }
  return TRUE;
}

/* The list is left alone while it says the same: it may be open just now. */
static void
show_shifts (LbShiftPage *self)
{
  const int shift = lb_job_get_shift (job_of (self));
  const guint n = lb_job_get_ledger (job_of (self))->shifts->len;
  g_autoptr (GListModel) names = make_names (self);

  self->is_updating = TRUE;
  if (!is_same_list (gtk_drop_down_get_model (self->shift_drop), names))
    gtk_drop_down_set_model (self->shift_drop, names);
  gtk_drop_down_set_selected (self->shift_drop,
                              shift < 0 ? 0 : n_before_shifts (self) + n - 1 - (guint) shift);
  self->is_updating = FALSE;
}

static void
show_sums (LbShiftPage *self)
{
  const int shift = lb_job_get_shift (job_of (self));
  g_autofree char *text = NULL;

  if (shift < 0) {
    text = g_strdup (_ ("No shift is open; the first entry opens today’s."));
  } else {
    const LbTotals *totals = &lb_job_get_fold (job_of (self))->shifts[shift];

    text = g_strdup_printf (
      /* Translators: sums of a shift. */
      _ ("%u cleaned, %u severed, %u rigged, %u pulled · %u bars · %u dives"),
      totals->steps[LB_STEP_CLEANED], totals->steps[LB_STEP_SEVERED], totals->steps[LB_STEP_RIGGED],
      totals->steps[LB_STEP_PULLED], totals->bars, totals->n_dives);
  }
  gtk_label_set_text (self->sums_label, text);
}

static void
sign_clicked_cb (LbShiftPage *self)
{
  lb_sign_bar_ask (self->sign_bar, lb_findings_open (lb_job_get_findings (job_of (self)),
                                                     lb_job_get_shift (job_of (self))));
}

static void
show_signature (LbShiftPage *self)
{
  LbJob *job = job_of (self);

  lb_sign_bar_show (self->sign_bar, job);
  gtk_widget_set_visible (GTK_WIDGET (self->sign_button), lb_job_get_signature (job) == NULL);
  gtk_widget_set_sensitive (GTK_WIDGET (self->sign_button),
                            lb_job_get_shift (job) >= 0 && !lb_job_is_read_only (job));
}

static void
lb_shift_page_job_changed (LbJobPage *page)
{
  LbShiftPage *self = LB_SHIFT_PAGE (page);

  if (job_of (self) == NULL)
    return;
  show_shifts (self);
  show_sums (self);
  show_signature (self);
  gtk_widget_set_sensitive (GTK_WIDGET (self->open_button), !lb_job_is_read_only (job_of (self)));
}

static void
shift_picked_cb (LbShiftPage *self)
{
  const guint picked = gtk_drop_down_get_selected (self->shift_drop);

  if (self->is_updating || job_of (self) == NULL || picked == GTK_INVALID_LIST_POSITION)
    return;

  const guint n = lb_job_get_ledger (job_of (self))->shifts->len;
  const guint before = n_before_shifts (self);
  const int shift = picked < before ? -1 : (int) (before + n - 1 - picked);

  /* GTK may tell of the selection after it was set here. */
  if (shift != lb_job_get_shift (job_of (self)))
    lb_job_pick_shift (job_of (self), shift);
}

static void
open_shift (LbShiftPage *self, const char *watch)
{
  g_autoptr (GDateTime) day = gtk_calendar_get_date (self->calendar);
  GError *error = NULL;
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay) g_date_time_get_day_of_month (day),
                  (GDateMonth) g_date_time_get_month (day), (GDateYear) g_date_time_get_year (day));
  gtk_popover_popdown (self->open_popover);
  if (!lb_job_open_shift (job_of (self), g_date_get_julian (&date), watch, &error))
    lb_say_error (GTK_WIDGET (self), _ ("The shift was not opened"), error);
}

static void
open_day_cb (LbShiftPage *self)
{
  open_shift (self, "day");
}

static void
open_night_cb (LbShiftPage *self)
{
  open_shift (self, "night");
}

static void
lb_shift_page_job_set (LbJobPage *page)
{
  LbShiftPage *self = LB_SHIFT_PAGE (page);
  LbShiftGroup *groups[] = {
    LB_SHIFT_GROUP (self->pile_lines), LB_SHIFT_GROUP (self->notes_group),
    LB_SHIFT_GROUP (self->used_group), LB_SHIFT_GROUP (self->dive_group),
    LB_SHIFT_GROUP (self->lost_group), LB_SHIFT_GROUP (self->conditions_group),
    LB_SHIFT_GROUP (self->crew_group), LB_SHIFT_GROUP (self->finding_group)
  };

  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    lb_shift_group_set_job (groups[i], lb_job_page_get_job (page));
  lb_shift_page_job_changed (page);
}

static void
lb_shift_page_selection_set (LbJobPage *page)
{
  lb_pile_lines_set_selection (LB_SHIFT_PAGE (page)->pile_lines, lb_job_page_get_selection (page));
}

static void
lb_shift_page_dispose (GObject *object)
{
  lb_job_page_leave (LB_JOB_PAGE (object));
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_SHIFT_PAGE);
  G_OBJECT_CLASS (lb_shift_page_parent_class)->dispose (object);
}

static void
lb_shift_page_class_init (LbShiftPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  LbJobPageClass *page_class = LB_JOB_PAGE_CLASS (klass);

  object_class->dispose = lb_shift_page_dispose;
  page_class->job_changed = lb_shift_page_job_changed;
  page_class->job_set = lb_shift_page_job_set;
  page_class->selection_set = lb_shift_page_selection_set;

  g_type_ensure (LB_TYPE_CONDITIONS_GROUP);
  g_type_ensure (LB_TYPE_CREW_GROUP);
  g_type_ensure (LB_TYPE_DIVE_GROUP);
  g_type_ensure (LB_TYPE_FINDING_GROUP);
  g_type_ensure (LB_TYPE_LOST_GROUP);
  g_type_ensure (LB_TYPE_NOTES_GROUP);
  g_type_ensure (LB_TYPE_PILE_LINES);
  g_type_ensure (LB_TYPE_SIGN_BAR);
  g_type_ensure (LB_TYPE_USED_GROUP);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/shift-page.ui");
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, calendar);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, conditions_group);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, crew_group);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, dive_group);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, finding_group);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, lost_group);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, notes_group);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, open_button);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, open_popover);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, pile_lines);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, shift_drop);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, sign_bar);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, sign_button);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, sums_label);
  gtk_widget_class_bind_template_child (widget_class, LbShiftPage, used_group);
  gtk_widget_class_bind_template_callback (widget_class, open_day_cb);
  gtk_widget_class_bind_template_callback (widget_class, open_night_cb);
  gtk_widget_class_bind_template_callback (widget_class, shift_picked_cb);
  gtk_widget_class_bind_template_callback (widget_class, sign_clicked_cb);
}

static void
lb_shift_page_init (LbShiftPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
