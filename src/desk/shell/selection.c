/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/selection.h"

struct _LbSelection
{
  GObject parent_instance;

  GArray *piles; /* guint, ascending, each once */
  int current;   /* one of them, -1 only when there are none */
};

G_DEFINE_FINAL_TYPE (LbSelection, lb_selection, G_TYPE_OBJECT)

enum {
  PROP_0,
  PROP_CURRENT,
  N_PROPS,
};

enum {
  CHANGED,
  N_SIGNALS,
};

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

static int
compare_piles (gconstpointer a, gconstpointer b)
{
  const guint one = *(const guint *) a, other = *(const guint *) b;

  return (one > other) - (one < other);
}

static gboolean
find (LbSelection *self, guint pile, guint *out_at)
{
  return g_array_binary_search (self->piles, &pile, compare_piles, out_at);
}

static void
emit_changed (LbSelection *self, int old_current)
{
  if (self->current != old_current)
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_CURRENT]);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
lb_selection_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  switch (id) {
  case PROP_CURRENT:
    g_value_set_int (value, lb_selection_get_current (LB_SELECTION (object)));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static void
lb_selection_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  switch (id) {
  case PROP_CURRENT:
    lb_selection_set_current (LB_SELECTION (object), g_value_get_int (value));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static void
lb_selection_finalize (GObject *object)
{
  g_array_unref (LB_SELECTION (object)->piles);
  G_OBJECT_CLASS (lb_selection_parent_class)->finalize (object);
}

static void
lb_selection_class_init (LbSelectionClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = lb_selection_get_property;
  object_class->set_property = lb_selection_set_property;
  object_class->finalize = lb_selection_finalize;

  props[PROP_CURRENT] = g_param_spec_int ("current", NULL, NULL, -1, G_MAXINT, -1,
                                          G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS |
                                            G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[CHANGED] = g_signal_new ("changed", LB_TYPE_SELECTION, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
lb_selection_init (LbSelection *self)
{
  self->piles = g_array_new (FALSE, FALSE, sizeof (guint));
  self->current = -1;
}

LbSelection *
lb_selection_new (void)
{
  return g_object_new (LB_TYPE_SELECTION, NULL);
}

int
lb_selection_get_current (LbSelection *self)
{
  g_return_val_if_fail (LB_IS_SELECTION (self), -1);

  return self->current;
}

void
lb_selection_set_current (LbSelection *self, int pile)
{
  const guint one = (guint) MAX (pile, 0);

  g_return_if_fail (LB_IS_SELECTION (self));
  g_return_if_fail (pile >= -1);

  lb_selection_set_piles (self, &one, pile < 0 ? 0 : 1);
}

const guint *
lb_selection_get_piles (LbSelection *self, gsize *out_n)
{
  g_return_val_if_fail (LB_IS_SELECTION (self), NULL);

  *out_n = self->piles->len;
  return (const guint *) (gpointer) self->piles->data;
}

gboolean
lb_selection_has (LbSelection *self, guint pile)
{
  g_return_val_if_fail (LB_IS_SELECTION (self), FALSE);

  return find (self, pile, NULL);
}

void
lb_selection_toggle (LbSelection *self, guint pile)
{
  const int old = self->current;
  guint at = 0;

  g_return_if_fail (LB_IS_SELECTION (self));

  if (find (self, pile, &at)) {
    g_array_remove_index (self->piles, at);
    if (self->current == (int) pile)
      self->current = self->piles->len > 0 ? (int) g_array_index (self->piles, guint, 0) : -1;
  } else {
    g_array_append_val (self->piles, pile);
    g_array_sort (self->piles, compare_piles);
    self->current = (int) pile;
  }
  emit_changed (self, old);
}

void
lb_selection_set_piles (LbSelection *self, const guint *piles, gsize n)
{
  const int old = self->current;
  g_autoptr (GArray) before = NULL;

  g_return_if_fail (LB_IS_SELECTION (self));
  g_return_if_fail (n == 0 || piles != NULL);

  before = g_steal_pointer (&self->piles);
  self->piles = g_array_sized_new (FALSE, FALSE, sizeof (guint), (guint) n);
  g_array_append_vals (self->piles, piles, (guint) n);
  g_array_sort (self->piles, compare_piles);
  for (guint i = self->piles->len; i-- > 1;)
    if (g_array_index (self->piles, guint, i) == g_array_index (self->piles, guint, i - 1))
      g_array_remove_index (self->piles, i);

  if (old < 0 || !find (self, (guint) old, NULL))
    self->current = n > 0 ? (int) g_array_index (self->piles, guint, 0) : -1;

  if (self->current == old && before->len == self->piles->len &&
      (before->len == 0 ||
       memcmp (before->data, self->piles->data, before->len * sizeof (guint)) == 0))
    return;
  emit_changed (self, old);
}
