/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Some fields are part of a line that is recorded whole; others show one thing that is stored and are
 * recorded by themselves. These have been told what is stored (lb_field_show), and say so when it is
 * to be another.
 *
 * Invariants: a text that was refused is not said again until it is another or Enter is pressed, so
 * that nobody is kept in a field; what is stored never replaces what is being typed. */
#include "desk/shift/field.h"

#include "desk/shell/say.h"

struct _LbField
{
  GtkBox parent_instance;

  GtkLabel *label;
  GtkEntry *entry;
  char *stored;  /* NULL in a field that is part of a line */
  char *refused; /* what was said last and was wrong */
  char **words;  /* that complete what was typed, NULL for none */
  gboolean is_leaving, is_saying;
};

G_DEFINE_FINAL_TYPE (LbField, lb_field, GTK_TYPE_BOX)

enum {
  PROP_CAPTION = 1,
  PROP_CHARS,
  PROP_HINT,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

enum {
  CHANGED,
  ACTIVATED,
  SAID,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* The word that @text begins, whatever its case, when there is one alone; itself when it is one. */
static const char *
find_word (const LbField *self, const char *text)
{
  g_autofree char *typed = g_utf8_casefold (text, -1);
  const char *found = NULL;
  guint n = 0;

  for (char **word = self->words; word != NULL && *word != NULL && *typed != '\0'; word++) {
    g_autofree char *folded = g_utf8_casefold (*word, -1);

    if (g_str_equal (folded, typed))
      return *word;
    if (g_str_has_prefix (folded, typed) && n++ == 0)
      found = *word;
  }
  return n == 1 ? found : NULL;
}

/* When what was typed is done with. */
static void
complete (LbField *self)
{
  const char *word = find_word (self, lb_field_get_text (self));

  if (word != NULL && !g_str_equal (word, lb_field_get_text (self)))
    gtk_editable_set_text (GTK_EDITABLE (self->entry), word);
}

static void
say (LbField *self)
{
  g_autofree char *text = g_strstrip (g_strdup (lb_field_get_text (self)));

  if (self->stored == NULL || g_str_equal (text, self->stored) ||
      (self->is_leaving && g_strcmp0 (text, self->refused) == 0))
    return;
  g_clear_pointer (&self->refused, g_free);
  self->is_saying = TRUE;
  g_signal_emit (self, signals[SAID], 0, text);
  self->is_saying = FALSE;
}

static void
activate_cb (LbField *self)
{
  complete (self);
  g_signal_emit (self, signals[ACTIVATED], 0);
  say (self);
}

static void
changed_cb (LbField *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
leave_cb (LbField *self)
{
  complete (self);
  self->is_leaving = TRUE;
  say (self);
  self->is_leaving = FALSE;
}

static void
lb_field_get_property (GObject *object, guint id, GValue *value, GParamSpec *spec)
{
  LbField *self = LB_FIELD (object);

  switch (id) {
  case PROP_CAPTION:
    g_value_set_string (value, gtk_label_get_label (self->label));
    break;
  case PROP_CHARS:
    g_value_set_int (value, gtk_editable_get_width_chars (GTK_EDITABLE (self->entry)));
    break;
  case PROP_HINT:
    g_value_set_string (value, gtk_entry_get_placeholder_text (self->entry));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
  }
}

static void
lb_field_set_property (GObject *object, guint id, const GValue *value, GParamSpec *spec)
{
  LbField *self = LB_FIELD (object);

  switch (id) {
  case PROP_CAPTION:
    lb_field_set_caption (self, g_value_get_string (value));
    break;
  case PROP_CHARS:
    gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), g_value_get_int (value));
    break;
  case PROP_HINT:
    gtk_entry_set_placeholder_text (self->entry, g_value_get_string (value));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
  }
}

static void
lb_field_finalize (GObject *object)
{
  LbField *self = LB_FIELD (object);

  g_free (self->stored);
  g_free (self->refused);
  g_strfreev (self->words);

  G_OBJECT_CLASS (lb_field_parent_class)->finalize (object);
}

static gboolean
lb_field_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (LB_FIELD (widget)->entry));
}

static void
lb_field_class_init (LbFieldClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = lb_field_get_property;
  object_class->set_property = lb_field_set_property;
  object_class->finalize = lb_field_finalize;
  GTK_WIDGET_CLASS (klass)->grab_focus = lb_field_grab_focus;

  props[PROP_CAPTION] = g_param_spec_string ("caption", NULL, NULL, NULL, flags);
  props[PROP_CHARS] = g_param_spec_int ("chars", NULL, NULL, -1, 100, -1, flags);
  props[PROP_HINT] = g_param_spec_string ("hint", NULL, NULL, NULL, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[CHANGED] = g_signal_new ("changed", LB_TYPE_FIELD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  signals[ACTIVATED] = g_signal_new ("activated", LB_TYPE_FIELD, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                     NULL, G_TYPE_NONE, 0);
  signals[SAID] = g_signal_new ("said", LB_TYPE_FIELD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
lb_field_init (LbField *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->label = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->label, 0);
  gtk_label_set_ellipsize (self->label, PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (GTK_WIDGET (self->label), "caption");
  gtk_widget_add_css_class (GTK_WIDGET (self->label), "dim-label");
  self->entry = GTK_ENTRY (gtk_entry_new ());
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 8);
  gtk_label_set_mnemonic_widget (self->label, GTK_WIDGET (self->entry));
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  self->label, NULL, -1);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->label));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->entry));
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), focus);
}

void
lb_field_set_caption (LbField *self, const char *caption)
{
  g_return_if_fail (LB_IS_FIELD (self));

  gtk_label_set_label (self->label, caption != NULL ? caption : "");
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->label), caption);
}

const char *
lb_field_get_caption (LbField *self)
{
  g_return_val_if_fail (LB_IS_FIELD (self), NULL);

  return gtk_label_get_label (self->label);
}

const char *
lb_field_get_text (LbField *self)
{
  g_return_val_if_fail (LB_IS_FIELD (self), NULL);

  return gtk_editable_get_text (GTK_EDITABLE (self->entry));
}

void
lb_field_set_text (LbField *self, const char *text)
{
  g_return_if_fail (LB_IS_FIELD (self));

  if (!g_str_equal (lb_field_get_text (self), text))
    gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
}

GtkWidget *
lb_field_get_entry (LbField *self)
{
  g_return_val_if_fail (LB_IS_FIELD (self), NULL);

  return GTK_WIDGET (self->entry);
}

void
lb_field_show (LbField *self, const char *stored)
{
  gboolean is_typing;

  g_return_if_fail (LB_IS_FIELD (self));
  g_return_if_fail (stored != NULL);

  is_typing = self->stored != NULL && !self->is_saying &&
              !g_str_equal (lb_field_get_text (self), self->stored);
  g_free (self->stored);
  self->stored = g_strdup (stored);
  if (!is_typing)
    lb_field_set_text (self, stored);
}

void
lb_field_mark (LbField *self, const GError *error)
{
  g_return_if_fail (LB_IS_FIELD (self));

  gtk_accessible_update_state (
    GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
    error != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->entry), error != NULL ? error->message : NULL);
  if (error == NULL) {
    gtk_widget_remove_css_class (GTK_WIDGET (self->entry), "error");
    return;
  }
  g_free (self->refused);
  self->refused = g_strdup (lb_field_get_text (self));
  gtk_widget_add_css_class (GTK_WIDGET (self->entry), "error");
  if (!self->is_leaving)
    gtk_widget_grab_focus (GTK_WIDGET (self->entry));
  lb_say (GTK_WIDGET (self), error->message, FALSE);
}

void
lb_field_complete (LbField *self, const char *const *words)
{
  g_return_if_fail (LB_IS_FIELD (self));
  g_return_if_fail (words != NULL);

  g_strfreev (self->words);
  self->words = g_strdupv ((char **) words);
}
