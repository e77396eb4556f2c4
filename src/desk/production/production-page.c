/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The manager's page: a sentence, the sums of the job, the daily chart, and the same as a table.
 * Everything shown is taken from the fold when the job says "changed"; the page keeps nothing of
 * its own but which of chart and table is up. */
#include "desk/production/production-page.h"

#include "desk/production/daily-chart-view.h"
#include "desk/production/day-table.h"
#include "desk/shell/say.h"
#include "desk/shell/selection.h"
#include "draw/burn-words.h"
#include "draw/daily-chart.h"
#include "draw/picture.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

/* A saved chart, in points: as wide as a letter page is long. */
#define SAVED_WIDTH  792
#define SAVED_HEIGHT 440

#define N_SUMS 8 /* over the chart */

struct _LbProductionPage
{
  LbJobPage parent_instance;

  /* Template widgets */
  LbDailyChartView *chart_view;
  GtkLabel *left_label;
  GtkLabel *sentence_label;
  GtkFlowBox *sums_box;
  GtkColumnView *table_view;
  GtkStack *whole_stack;

  /* Owned */
  GtkFileChooserNative *chooser;

  GtkLabel *sum_labels[N_SUMS]; /* borrowed */
};

G_DEFINE_FINAL_TYPE (LbProductionPage, lb_production_page, LB_TYPE_JOB_PAGE)

typedef enum {
  SUM_OUT,
  SUM_BARS,
  SUM_RODS,
  SUM_OXYGEN,
  SUM_DIVES,
  SUM_BOTTOM,
  SUM_DELAYS,
  SUM_GEAR,
} Sum;

static const char *const sum_titles[N_SUMS] = {
  [SUM_OUT] = N_ ("piles out"), [SUM_BARS] = N_ ("bars burned"),  [SUM_RODS] = N_ ("rods"),
  [SUM_OXYGEN] = N_ ("oxygen"), [SUM_DIVES] = N_ ("dives"),       [SUM_BOTTOM] = N_ ("bottom time"),
  [SUM_DELAYS] = N_ ("delays"), [SUM_GEAR] = N_ ("lost to gear"),
};

static LbJob *
job_of (LbProductionPage *self)
{
  return lb_job_page_get_job (LB_JOB_PAGE (self));
}

static void
add_sums (LbProductionPage *self)
{
  for (gsize i = 0; i < N_SUMS; i++) {
    GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
    GtkWidget *value = gtk_label_new (NULL);
    GtkWidget *title = gtk_label_new (_ (sum_titles[i]));

    gtk_widget_add_css_class (box, "sum");
    gtk_widget_add_css_class (value, "title-2");
    gtk_widget_add_css_class (value, "numeric");
    gtk_widget_add_css_class (title, "dim-label");
    /* On two lines rather than the last sum alone on a second row. */
    gtk_label_set_wrap (GTK_LABEL (title), TRUE);
    gtk_label_set_max_width_chars (GTK_LABEL (title), 12);
    gtk_label_set_justify (GTK_LABEL (title), GTK_JUSTIFY_CENTER);
    gtk_box_append (GTK_BOX (box), value);
    gtk_box_append (GTK_BOX (box), title);
    gtk_flow_box_append (self->sums_box, box);
    gtk_widget_set_can_focus (gtk_widget_get_parent (box), FALSE);
    self->sum_labels[i] = GTK_LABEL (value);
  }
}

static void
show_sum (LbProductionPage *self, Sum sum, char *taken)
{
  g_autofree char *value = taken;

  gtk_label_set_text (self->sum_labels[sum], value);
}

/* Sums of a whole job are too many minutes to read. */
static char *
hours_text (const LbVoice *voice, double s)
{
  g_autofree char *hours = lb_number_to_text (s / 3600, 0, &voice->numbers);

  /* Translators: a number of hours. */
  return g_strdup_printf (_ ("%s h"), hours);
}

static void
show_sums (LbProductionPage *self)
{
  const LbFold *fold = lb_job_get_fold (job_of (self));
  const LbVoice *voice = lb_job_get_voice (job_of (self));
  const LbTotals *job = &fold->job;

  show_sum (self, SUM_OUT,
            /* Translators: so many of so many. */
            g_strdup_printf (_ ("%u of %u"), fold->n_by_step[LB_STEP_PULLED], fold->n_piles));
  show_sum (self, SUM_BARS, lb_number_to_text (job->bars, 0, &voice->numbers));
  show_sum (self, SUM_RODS, lb_number_to_text (job->rods, 0, &voice->numbers));
  show_sum (self, SUM_OXYGEN,
            lb_quantity_to_text (LB_QUANTITY_GAS, voice->units, job->oxygen_m3, &voice->numbers));
  show_sum (self, SUM_DIVES, lb_number_to_text (job->n_dives, 0, &voice->numbers));
  show_sum (self, SUM_BOTTOM, hours_text (voice, job->bottom_s));
  show_sum (self, SUM_DELAYS, hours_text (voice, job->delay_s));
  show_sum (self, SUM_GEAR, hours_text (voice, job->fault_s));
}

static void
show_left (LbProductionPage *self)
{
  const LbFold *fold = lb_job_get_fold (job_of (self));
  LbBurnLeft left;
  LbBurnNeed need;

  lb_fold_burn_left (fold, &left);
  lb_burn_left_predict (&left, lb_fold_basis (fold), &need);

  g_autofree char *words = lb_burn_left_text (lb_job_get_voice (job_of (self)), &left, &need);

  gtk_label_set_text (self->left_label, words);
}

static LbDailyChart
chart_of (LbProductionPage *self)
{
  const LbFold *fold = lb_job_get_fold (job_of (self));

  return (LbDailyChart){ .days = fold->days,
                         .n_days = fold->n_days,
                         .n_piles = fold->n_piles,
                         .focus = -1 };
}

static void
lb_production_page_job_changed (LbJobPage *page)
{
  LbProductionPage *self = LB_PRODUCTION_PAGE (page);

  if (job_of (self) == NULL || lb_job_get_fold (job_of (self))->n_days == 0) {
    gtk_stack_set_visible_child_name (self->whole_stack, "empty");
    return;
  }

  const LbDailyChart chart = chart_of (self);
  g_autofree char *sentence = lb_daily_chart_sentence (&chart);

  gtk_label_set_text (self->sentence_label, sentence);
  show_left (self);
  show_sums (self);
  lb_day_table_show (self->table_view, job_of (self));
  gtk_stack_set_visible_child_name (self->whole_stack, "days");
}

static void
draw_saved (cairo_t *cr, gsize page, double width, double height, gpointer data)
{
  LbProductionPage *self = data;
  const LbDailyChart chart = chart_of (self);

  lb_daily_chart_draw (cr, lb_palette (LB_PALETTE_LIGHT), lb_job_get_voice (job_of (self)), &chart,
                       width, height);
}

static void
save_response_cb (LbProductionPage *self, int response, GtkFileChooserNative *chooser)
{
  if (response == GTK_RESPONSE_ACCEPT && job_of (self) != NULL) {
    g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
    g_autofree char *path = g_file_get_path (file);
    g_autofree char *said = NULL;
    GError *error = NULL;

    if (path == NULL) {
      lb_say (GTK_WIDGET (self), _ ("Pictures can be saved on this computer only"), FALSE);
    } else if (lb_picture_write (path, SAVED_WIDTH, SAVED_HEIGHT, 1,
                                 lb_job_get_fold (job_of (self))->name, draw_saved, self, &error))
    {
      said = g_strdup_printf (_ ("Saved as %s"), path);
      lb_say (GTK_WIDGET (self), said, FALSE);
    } else {
      lb_say_error (GTK_WIDGET (self), _ ("The picture was not saved"), error);
    }
  }
  g_clear_object (&self->chooser);
}

static void
save_cb (GtkWidget *widget, const char *action, GVariant *ending)
{
  LbProductionPage *self = LB_PRODUCTION_PAGE (widget);
  g_autofree char *name = g_strdup_printf ("%s.%s", _ ("daily-production"),
                                           g_variant_get_string (ending, NULL));

  if (self->chooser != NULL || job_of (self) == NULL)
    return;
  self->chooser = gtk_file_chooser_native_new (
    _ ("Save the Chart"), GTK_WINDOW (gtk_widget_get_root (widget)), GTK_FILE_CHOOSER_ACTION_SAVE,
    _ ("_Save"), _ ("_Cancel"));
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (save_response_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
lb_production_page_job_set (LbJobPage *page)
{
  lb_daily_chart_view_set_job (LB_PRODUCTION_PAGE (page)->chart_view, lb_job_page_get_job (page));
  lb_production_page_job_changed (page);
}

static void
lb_production_page_dispose (GObject *object)
{
  LbProductionPage *self = LB_PRODUCTION_PAGE (object);

  lb_job_page_leave (LB_JOB_PAGE (self));
  g_clear_object (&self->chooser);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_PRODUCTION_PAGE);

  G_OBJECT_CLASS (lb_production_page_parent_class)->dispose (object);
}

static void
lb_production_page_class_init (LbProductionPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  LbJobPageClass *page_class = LB_JOB_PAGE_CLASS (klass);

  object_class->dispose = lb_production_page_dispose;
  page_class->job_changed = lb_production_page_job_changed;
  page_class->job_set = lb_production_page_job_set;

  g_type_ensure (LB_TYPE_DAILY_CHART_VIEW);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/production-page.ui");
  gtk_widget_class_bind_template_child (widget_class, LbProductionPage, chart_view);
  gtk_widget_class_bind_template_child (widget_class, LbProductionPage, left_label);
  gtk_widget_class_bind_template_child (widget_class, LbProductionPage, sentence_label);
  gtk_widget_class_bind_template_child (widget_class, LbProductionPage, sums_box);
  gtk_widget_class_bind_template_child (widget_class, LbProductionPage, table_view);
  gtk_widget_class_bind_template_child (widget_class, LbProductionPage, whole_stack);
  gtk_widget_class_install_action (widget_class, "production.save", "s", save_cb);
}

static void
lb_production_page_init (LbProductionPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_sums (self);
}
