/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A thin widget over draw/daily-chart: it knows which day has the focus and nothing of how the
 * chart is laid out. The focus is kept as a Julian day, so that it survives a refold. */
#include "desk/production/daily-chart-view.h"

#include "desk/shell/look.h"
#include "draw/daily-chart.h"
#include "draw/plan-words.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

/* Days to walk that no job is long: to the first and the last. */
#define FAR G_MAXINT16

struct _LbDailyChartView
{
  GtkWidget parent_instance;

  /* Owned */
  LbJob *job;
  GSignalGroup *job_signals;

  /* State */
  guint32 day; /* 0 for none */
};

G_DEFINE_FINAL_TYPE (LbDailyChartView, lb_daily_chart_view, GTK_TYPE_WIDGET)

enum {
  PROP_DAY = 1,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static LbDailyChart
chart_of (LbDailyChartView *self)
{
  LbDailyChart chart = { .focus = -1 };

  if (self->job == NULL)
    return chart;

  const LbFold *fold = lb_job_get_fold (self->job);

  chart.days = fold->days;
  chart.n_days = fold->n_days;
  chart.n_piles = fold->n_piles;
  for (gsize i = 0; i < fold->n_days; i++) {
    if (fold->days[i].day == self->day)
      chart.focus = (int) i;
  }

  return chart;
}

/* "Mon 8 Jun 2026: 3 cleaned, 2 severed, 1 rigged, 2 pulled, 14 bars burned" */
static char *
day_words (const LbDay *day)
{
  g_autofree char *name = lb_day_text (day->day);

  return g_strdup_printf (
    /* Translators: a day's figures, read out by a screen reader. */
    _ ("%s: %u cleaned, %u severed, %u rigged, %u pulled, %u bars burned"), name,
    day->totals.steps[LB_STEP_CLEANED], day->totals.steps[LB_STEP_SEVERED],
    day->totals.steps[LB_STEP_RIGGED], day->totals.steps[LB_STEP_PULLED], day->totals.bars);
}

static void
update (LbDailyChartView *self)
{
  const LbDailyChart chart = chart_of (self);
  g_autofree char *words = chart.focus >= 0 ? day_words (&chart.days[chart.focus])
                                            : lb_daily_chart_sentence (&chart);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words,
                                  -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
focus_index (LbDailyChartView *self, int index)
{
  const LbDailyChart chart = chart_of (self);

  if (index >= 0 && (gsize) index < chart.n_days)
    lb_daily_chart_view_set_day (self, chart.days[index].day);
  else
    lb_daily_chart_view_set_day (self, 0);
}

static void
motion_cb (GtkEventControllerMotion *motion, double x, double y, LbDailyChartView *self)
{
  const LbDailyChart chart = chart_of (self);

  if (chart.n_days > 0)
    focus_index (self, lb_daily_chart_day_at (&chart, lb_job_get_voice (self->job),
                                              gtk_widget_get_width (GTK_WIDGET (self)),
                                              gtk_widget_get_height (GTK_WIDGET (self)), x));
}

static void
pressed_cb (GtkGestureClick *click, int n_press, double x, double y, LbDailyChartView *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

/* Left and Right a day, Home and End the first and the last. */
static gboolean
walk_cb (GtkWidget *widget, GVariant *args, gpointer data)
{
  LbDailyChartView *self = LB_DAILY_CHART_VIEW (widget);
  const LbDailyChart chart = chart_of (self);
  const int by = g_variant_get_int32 (args);
  const int last = (int) chart.n_days - 1;

  if (last < 0)
    return FALSE;
  /* With no day in focus one comes in from the near end: the newest by Left, the first by Right. */
  if (chart.focus < 0 && ABS (by) < FAR)
    focus_index (self, by < 0 ? last : 0);
  else
    focus_index (self, CLAMP (MAX (chart.focus, 0) + by, 0, last));

  return TRUE;
}

static void
lb_daily_chart_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  LbDailyChartView *self = LB_DAILY_CHART_VIEW (widget);
  const int width = gtk_widget_get_width (widget);
  const int height = gtk_widget_get_height (widget);
  const LbDailyChart chart = chart_of (self);
  cairo_t *cr;

  if (self->job == NULL)
    return;

  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  lb_daily_chart_draw (cr, lb_look_palette (widget), lb_job_get_voice (self->job), &chart, width,
                       height);
  cairo_destroy (cr);
}

static void
lb_daily_chart_view_measure (GtkWidget *widget,
                             GtkOrientation orientation,
                             int for_size,
                             int *minimum,
                             int *natural,
                             int *minimum_baseline,
                             int *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 480 : 260;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 900 : 420;
}

static void
lb_daily_chart_view_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_DAY)
    g_value_set_uint (value, LB_DAILY_CHART_VIEW (object)->day);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
lb_daily_chart_view_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_DAY)
    lb_daily_chart_view_set_day (LB_DAILY_CHART_VIEW (object), g_value_get_uint (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
lb_daily_chart_view_dispose (GObject *object)
{
  LbDailyChartView *self = LB_DAILY_CHART_VIEW (object);

  g_clear_object (&self->job_signals);
  g_clear_object (&self->job);

  G_OBJECT_CLASS (lb_daily_chart_view_parent_class)->dispose (object);
}

static void
lb_daily_chart_view_class_init (LbDailyChartViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const struct
  {
    guint key;
    int by;
  } keys[] = { { GDK_KEY_Left, -1 },     { GDK_KEY_Right, 1 },   { GDK_KEY_Page_Up, -7 },
               { GDK_KEY_Page_Down, 7 }, { GDK_KEY_Home, -FAR }, { GDK_KEY_End, FAR } };

  object_class->dispose = lb_daily_chart_view_dispose;
  object_class->get_property = lb_daily_chart_view_get_property;
  object_class->set_property = lb_daily_chart_view_set_property;
  widget_class->measure = lb_daily_chart_view_measure;
  widget_class->snapshot = lb_daily_chart_view_snapshot;

  props[PROP_DAY] = g_param_spec_uint ("day", NULL, NULL, 0, G_MAXUINT, 0,
                                       G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS |
                                         G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding (widget_class, keys[i].key, 0, walk_cb, "i", keys[i].by);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "dailychart");
}

static void
lb_daily_chart_view_init (LbDailyChartView *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Daily production"), -1);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  lb_look_follow (GTK_WIDGET (self));

  self->job_signals = g_signal_group_new (LB_TYPE_JOB);
  g_signal_group_connect_swapped (self->job_signals, "changed", G_CALLBACK (update), self);
}

void
lb_daily_chart_view_set_job (LbDailyChartView *self, LbJob *job)
{
  g_return_if_fail (LB_IS_DAILY_CHART_VIEW (self));
  g_return_if_fail (job == NULL || LB_IS_JOB (job));

  if (!g_set_object (&self->job, job))
    return;
  g_signal_group_set_target (self->job_signals, job);
  update (self);
}

guint32
lb_daily_chart_view_get_day (LbDailyChartView *self)
{
  g_return_val_if_fail (LB_IS_DAILY_CHART_VIEW (self), 0);

  return self->day;
}

void
lb_daily_chart_view_set_day (LbDailyChartView *self, guint32 day)
{
  g_return_if_fail (LB_IS_DAILY_CHART_VIEW (self));

  if (self->day == day)
    return;
  self->day = day;
  update (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DAY]);
}
