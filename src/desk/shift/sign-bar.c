/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shift/sign-bar.h"

#include "desk/shell/ask-word.h"
#include "desk/shell/say.h"
#include "draw/plan-words.h"

#include <glib/gi18n-lib.h>

/* Enough of a seal to tell it from another by eye; the whole one is on paper. */
#define SHOWN_DIGITS 12

struct _LbSignBar
{
  GtkBox parent_instance;

  /* Template widgets */
  GtkButton *correct_button;
  GtkButton *done_button;
  GtkImage *image;
  GtkLabel *label;

  /* Owned */
  LbJob *job;
};

G_DEFINE_FINAL_TYPE (LbSignBar, lb_sign_bar, GTK_TYPE_BOX)

/* The last who signed anything, who mostly signs again. */
static const char *
last_signer (LbJob *job)
{
  const LbFold *fold = lb_job_get_fold (job);

  for (gsize i = fold->n_shifts; i-- > 0;) {
    if (fold->signatures[i].at_us != 0)
      return fold->signatures[i].who;
  }
  return NULL;
}

static void
signed_cb (const char *who, gboolean print, gpointer data)
{
  LbSignBar *self = LB_SIGN_BAR (data);
  GError *error = NULL;

  if (self->job == NULL)
    return;
  if (!lb_job_sign (self->job, who, &error)) {
    lb_say_error (GTK_WIDGET (self), _ ("The shift was not signed"), error);
    return;
  }
  lb_say (GTK_WIDGET (self), _ ("The shift is signed"), FALSE);
  if (print)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.print-day", NULL);
}

void
lb_sign_bar_ask (LbSignBar *self, guint n_open)
{
  g_return_if_fail (LB_IS_SIGN_BAR (self));
  g_return_if_fail (self->job != NULL);

  const int shift = lb_job_get_shift (self->job);
  if (shift < 0)
    return;

  g_autofree char *day = lb_day_text (
    lb_ledger_shift (lb_job_get_ledger (self->job), (guint) shift)->day);
  /* Translators: number and day of a shift. */
  g_autofree char *heading = g_strdup_printf (_ ("Sign Shift %d of %s?"), shift + 1, day);
  const char *after = _ (
    "From then on it is changed only by corrections that say why, and any other "
    "change shows.");
  g_autofree char *open = g_strdup_printf (
    ngettext ("%u finding is not answered yet.", "%u findings are not answered yet.", n_open),
    n_open);
  g_autofree char *body = n_open > 0 ? g_strdup_printf ("%s\n\n%s", open, after) : g_strdup (after);
  const LbQuestion question = {
    .heading = heading,
    .body = body,
    .label = _ ("Signed by (role or initials)"),
    .initial = last_signer (self->job),
    .accept = _ ("_Sign"),
    .also = _ ("Sign and _Print…"),
  };

  lb_ask_word (GTK_WIDGET (self), &question, signed_cb, g_object_ref (self), g_object_unref);
}

static void
corrected_cb (const char *reason, gboolean also, gpointer data)
{
  LbSignBar *self = LB_SIGN_BAR (data);

  if (self->job != NULL)
    lb_job_set_correction (self->job, reason);
}

static void
correct_clicked_cb (LbSignBar *self)
{
  const LbQuestion question = {
    .heading = _ ("Correct the Signed Shift?"),
    .body = _ (
      "What you record, or take back, goes in as a correction with this reason, beside what "
      "was signed, until you press “Done”."),
    .label = _ ("Why"),
    .accept = _ ("_Correct"),
  };

  lb_ask_word (GTK_WIDGET (self), &question, corrected_cb, g_object_ref (self), g_object_unref);
}

static void
done_clicked_cb (LbSignBar *self)
{
  if (self->job != NULL)
    lb_job_set_correction (self->job, NULL);
}

static char *
signature_text (const LbSignature *signature)
{
  g_autofree char *moment = lb_moment_text (signature->at_us);
  g_autofree char *since = g_strdup_printf (
    ngettext (" · %u entry since", " · %u entries since", signature->n_since), signature->n_since);

  return g_strdup_printf (
    /* Translators: who signed, when, the first digits of the seal, and perhaps how much was recorded
     * since. */
    _ ("Signed by %s, %s · seal %.*s…%s"), signature->who, moment, SHOWN_DIGITS, signature->hash,
    signature->n_since > 0 ? since : "");
}

void
lb_sign_bar_show (LbSignBar *self, LbJob *job)
{
  g_return_if_fail (LB_IS_SIGN_BAR (self));

  g_set_object (&self->job, job);

  const LbSignature *signature = job != NULL ? lb_job_get_signature (job) : NULL;
  gtk_widget_set_visible (GTK_WIDGET (self), signature != NULL);
  if (signature == NULL)
    return;

  const char *reason = lb_job_get_correction (job);
  g_autofree char *text = reason != NULL
                            ? g_strdup_printf (_ ("Correcting a signed shift: %s"), reason)
                            : signature_text (signature);
  gtk_label_set_text (self->label, text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->label), signature->hash);
  gtk_image_set_from_icon_name (self->image,
                                reason != NULL ? "document-edit-symbolic" : "emblem-ok-symbolic");
  gtk_widget_set_visible (GTK_WIDGET (self->correct_button),
                          reason == NULL && !lb_job_is_read_only (job));
  gtk_widget_set_visible (GTK_WIDGET (self->done_button), reason != NULL);
}

static void
lb_sign_bar_dispose (GObject *object)
{
  g_clear_object (&LB_SIGN_BAR (object)->job);
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_SIGN_BAR);
  G_OBJECT_CLASS (lb_sign_bar_parent_class)->dispose (object);
}

static void
lb_sign_bar_class_init (LbSignBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_sign_bar_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/lastbent/Lastbent/sign-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, LbSignBar, correct_button);
  gtk_widget_class_bind_template_child (widget_class, LbSignBar, done_button);
  gtk_widget_class_bind_template_child (widget_class, LbSignBar, image);
  gtk_widget_class_bind_template_child (widget_class, LbSignBar, label);
  gtk_widget_class_bind_template_callback (widget_class, correct_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, done_clicked_cb);
}

static void
lb_sign_bar_init (LbSignBar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
