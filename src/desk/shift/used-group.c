/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rods and oxygen of the whole shift: used, come aboard, on hand at its end; and what is left. */
#include "desk/shift/used-group.h"

#include "book/stock.h"
#include "draw/record-words.h"

#include <glib/gi18n-lib.h>

/* What each field records, three to a row. */
static const struct
{
  LbEntryKind kind;
  const char *what;
  LbQuantity quantity;
  const char *caption; /* msgid */
} kinds[] = {
  { LB_ENTRY_RODS, NULL, LB_QUANTITY_COUNT, N_ ("Rods used") },
  { LB_ENTRY_DELIVERY, LB_STOCK_RODS, LB_QUANTITY_COUNT, N_ ("Rods came") },
  { LB_ENTRY_STOCK, LB_STOCK_RODS, LB_QUANTITY_COUNT, N_ ("Rods at the end") },
  { LB_ENTRY_OXYGEN, NULL, LB_QUANTITY_GAS, N_ ("Oxygen used") },
  { LB_ENTRY_DELIVERY, LB_STOCK_CYLINDERS, LB_QUANTITY_COUNT, N_ ("Cylinders came") },
  { LB_ENTRY_STOCK, LB_STOCK_CYLINDERS, LB_QUANTITY_COUNT, N_ ("Full ones at the end") },
};

#define N_COLUMNS 3

struct _LbUsedGroup
{
  LbShiftGroup parent_instance;

  /* Template widgets */
  GtkLabel *cylinders_label;
  GtkGrid *grid;
  GtkLabel *rods_label;

  LbField *fields[G_N_ELEMENTS (kinds)];
};

G_DEFINE_FINAL_TYPE (LbUsedGroup, lb_used_group, LB_TYPE_SHIFT_GROUP)

static gboolean
is_count (gsize i)
{
  return kinds[i].kind == LB_ENTRY_STOCK;
}

/* None left is a count as any other; none used is not worth an entry. */
static gboolean
read_amount (LbUsedGroup *self, gsize i, double *out_amount)
{
  LbShiftGroup *group = LB_SHIFT_GROUP (self);

  if (is_count (i) && g_str_equal (lb_field_get_text (self->fields[i]), "0")) {
    lb_field_mark (self->fields[i], NULL);
    *out_amount = 0;
    return TRUE;
  }
  return lb_shift_group_read_amount (group, self->fields[i], kinds[i].quantity, out_amount);
}

static void
said_cb (LbField *field, const char *text, LbUsedGroup *self)
{
  LbDraft draft;
  gsize i = 0;

  while (self->fields[i] != field)
    i++;
  draft = LB_DRAFT_INIT (kinds[i].kind);
  draft.what = kinds[i].what;
  if (read_amount (self, i, &draft.amount) && lb_shift_group_record (LB_SHIFT_GROUP (self), &draft))
    lb_field_set_text (field, "");
}

static void
show_left (LbUsedGroup *self, GtkLabel *label, const char *what, int shift)
{
  LbJob *job = lb_shift_group_get_job (LB_SHIFT_GROUP (self));
  LbStock stock;
  g_autofree char *said = NULL;

  lb_stock_at (lb_job_get_ledger (job), lb_job_get_fold (job), what, shift, &stock);
  said = lb_stock_text (lb_job_get_voice (job), what, &stock);
  gtk_label_set_text (label, said);
}

static void
lb_used_group_update (LbShiftGroup *group)
{
  LbUsedGroup *self = LB_USED_GROUP (group);
  LbJob *job = lb_shift_group_get_job (group);
  const LbVoice *voice = lb_job_get_voice (job);
  const int shift = lb_job_get_shift (job);
  /* Before today's shift is open, what the last one left. */
  const int last = shift >= 0 ? shift : (int) lb_job_get_ledger (job)->shifts->len - 1;
  g_autofree char *said = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++) {
    lb_field_show (self->fields[i], "");
    if (kinds[i].quantity != LB_QUANTITY_COUNT)
      lb_shift_group_caption (group, self->fields[i], _ (kinds[i].caption), kinds[i].quantity);
  }
  if (shift >= 0) {
    const LbTotals *totals = &lb_job_get_fold (job)->shifts[shift];
    g_autofree char *rods = lb_number_to_text (totals->rods, 0, &voice->numbers);
    g_autofree char *oxygen = lb_quantity_to_text (LB_QUANTITY_GAS, voice->units, totals->oxygen_m3,
                                                   &voice->numbers);

    /* Translators: “This shift: 32 rods, 640 cu ft of oxygen” */
    said = g_strdup_printf (_ ("This shift: %s rods, %s of oxygen"), rods, oxygen);
  }
  adw_preferences_group_set_description (ADW_PREFERENCES_GROUP (self),
                                         said != NULL ? said : _ ("This shift: nothing yet"));
  show_left (self, self->rods_label, LB_STOCK_RODS, last);
  show_left (self, self->cylinders_label, LB_STOCK_CYLINDERS, last);
}

static void
lb_used_group_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), LB_TYPE_USED_GROUP);

  G_OBJECT_CLASS (lb_used_group_parent_class)->dispose (object);
}

static void
lb_used_group_class_init (LbUsedGroupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  LbShiftGroupClass *group_class = LB_SHIFT_GROUP_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_used_group_dispose;
  group_class->kinds = LB_ENTRY_KIND_BIT (LB_ENTRY_RODS) | LB_ENTRY_KIND_BIT (LB_ENTRY_OXYGEN) |
                       LB_ENTRY_KIND_BIT (LB_ENTRY_STOCK) | LB_ENTRY_KIND_BIT (LB_ENTRY_DELIVERY);
  group_class->update = lb_used_group_update;

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/lastbent/Lastbent/used-group.ui");
  gtk_widget_class_bind_template_child (widget_class, LbUsedGroup, cylinders_label);
  gtk_widget_class_bind_template_child (widget_class, LbUsedGroup, grid);
  gtk_widget_class_bind_template_child (widget_class, LbUsedGroup, rods_label);
}

static void
lb_used_group_init (LbUsedGroup *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++) {
    self->fields[i] = g_object_new (LB_TYPE_FIELD, "caption", _ (kinds[i].caption), NULL);
    g_signal_connect_object (self->fields[i], "said", G_CALLBACK (said_cb), self, 0);
    gtk_grid_attach (self->grid, GTK_WIDGET (self->fields[i]), (int) i % N_COLUMNS,
                     (int) i / N_COLUMNS, 1, 1);
  }
}
