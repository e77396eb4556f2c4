/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/job-page.h"

typedef struct
{
  LbJob *job;
  LbSelection *selection;
  GSignalGroup *job_signals;
  GSignalGroup *selection_signals;
} LbJobPagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (LbJobPage, lb_job_page, GTK_TYPE_WIDGET)

enum {
  PROP_JOB = 1,
  PROP_SELECTION,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static LbJobPagePrivate *
private_of (LbJobPage *self)
{
  return lb_job_page_get_instance_private (self);
}

static void
job_changed_cb (LbJobPage *self)
{
  if (LB_JOB_PAGE_GET_CLASS (self)->job_changed != NULL)
    LB_JOB_PAGE_GET_CLASS (self)->job_changed (self);
}

static void
selection_changed_cb (LbJobPage *self)
{
  if (LB_JOB_PAGE_GET_CLASS (self)->selection_changed != NULL)
    LB_JOB_PAGE_GET_CLASS (self)->selection_changed (self);
}

static void
set_job (LbJobPage *self, LbJob *job)
{
  LbJobPagePrivate *own = private_of (self);

  if (!g_set_object (&own->job, job))
    return;
  g_signal_group_set_target (own->job_signals, job);
  if (LB_JOB_PAGE_GET_CLASS (self)->job_set != NULL)
    LB_JOB_PAGE_GET_CLASS (self)->job_set (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_JOB]);
}

static void
set_selection (LbJobPage *self, LbSelection *selection)
{
  LbJobPagePrivate *own = private_of (self);

  if (!g_set_object (&own->selection, selection))
    return;
  g_signal_group_set_target (own->selection_signals, selection);
  if (LB_JOB_PAGE_GET_CLASS (self)->selection_set != NULL)
    LB_JOB_PAGE_GET_CLASS (self)->selection_set (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SELECTION]);
}

static void
lb_job_page_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  LbJobPagePrivate *own = private_of (LB_JOB_PAGE (object));

  switch (id) {
  case PROP_JOB:
    g_value_set_object (value, own->job);
    break;
  case PROP_SELECTION:
    g_value_set_object (value, own->selection);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static void
lb_job_page_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  switch (id) {
  case PROP_JOB:
    set_job (LB_JOB_PAGE (object), g_value_get_object (value));
    break;
  case PROP_SELECTION:
    set_selection (LB_JOB_PAGE (object), g_value_get_object (value));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static void
lb_job_page_dispose (GObject *object)
{
  LbJobPagePrivate *own = private_of (LB_JOB_PAGE (object));
  GtkWidget *child;

  lb_job_page_leave (LB_JOB_PAGE (object));
  /* GTK 4.8 forgets a template's children and lets go only of those that have a name. */
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&own->job);
  g_clear_object (&own->selection);
  G_OBJECT_CLASS (lb_job_page_parent_class)->dispose (object);
}

static void
lb_job_page_finalize (GObject *object)
{
  LbJobPagePrivate *own = private_of (LB_JOB_PAGE (object));

  g_clear_object (&own->job_signals);
  g_clear_object (&own->selection_signals);
  G_OBJECT_CLASS (lb_job_page_parent_class)->finalize (object);
}

static void
lb_job_page_class_init (LbJobPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->dispose = lb_job_page_dispose;
  object_class->finalize = lb_job_page_finalize;
  object_class->get_property = lb_job_page_get_property;
  object_class->set_property = lb_job_page_set_property;

  props[PROP_JOB] = g_param_spec_object ("job", NULL, NULL, LB_TYPE_JOB, flags);
  props[PROP_SELECTION] = g_param_spec_object ("selection", NULL, NULL, LB_TYPE_SELECTION, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
lb_job_page_init (LbJobPage *self)
{
  LbJobPagePrivate *own = private_of (self);

  own->job_signals = g_signal_group_new (LB_TYPE_JOB);
  g_signal_group_connect_swapped (own->job_signals, "changed", G_CALLBACK (job_changed_cb), self);
  own->selection_signals = g_signal_group_new (LB_TYPE_SELECTION);
  g_signal_group_connect_swapped (own->selection_signals, "changed",
                                  G_CALLBACK (selection_changed_cb), self);
}

LbJob *
lb_job_page_get_job (LbJobPage *self)
{
  g_return_val_if_fail (LB_IS_JOB_PAGE (self), NULL);

  return private_of (self)->job;
}

LbSelection *
lb_job_page_get_selection (LbJobPage *self)
{
  g_return_val_if_fail (LB_IS_JOB_PAGE (self), NULL);

  return private_of (self)->selection;
}

void
lb_job_page_leave (LbJobPage *self)
{
  g_return_if_fail (LB_IS_JOB_PAGE (self));

  g_signal_group_set_target (private_of (self)->job_signals, NULL);
  g_signal_group_set_target (private_of (self)->selection_signals, NULL);
}
