/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"
#include "desk/shift/field.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* A part of the shift's sheet: rows to type in, and under them what the shift has of that kind,
 * each line with a button that takes it back. Subclasses add the rows to type in. */
#define LB_TYPE_SHIFT_GROUP (lb_shift_group_get_type ())
G_DECLARE_DERIVABLE_TYPE (LbShiftGroup, lb_shift_group, LB, SHIFT_GROUP, AdwPreferencesGroup)

#define LB_ENTRY_KIND_BIT(kind) (1u << (kind))

struct _LbShiftGroupClass
{
  AdwPreferencesGroupClass parent_class;

  guint kinds; /* LB_ENTRY_KIND_BITs of the entries to list */

  /* The job, its shift or its units are others now; may be NULL. Comes before the list is shown.
   * Chain up is not needed. */
  void (*update) (LbShiftGroup *self);

  /* All that the suffix says which the entry does not: its row is made again when this is another.
   * To be freed; NULL where the entry says all. */
  char *(*suffix_text) (LbShiftGroup *self, const LbEntry *entry);

  /* What is said under an entry's own words; to be freed, NULL for nothing. */
  char *(*detail) (LbShiftGroup *self, const LbEntry *entry);

  /* An entry with a detail is pressed. */
  void (*activate) (LbShiftGroup *self, const LbEntry *entry);

  /* What stands at the right end of an entry's row; NULL for nothing. */
  GtkWidget *(*suffix) (LbShiftGroup *self, const LbEntry *entry);
};

void lb_shift_group_set_job (LbShiftGroup *self, LbJob *job);
LbJob *lb_shift_group_get_job (LbShiftGroup *self);

/* The shift the sheet is of, NULL before one is open. */
const LbShift *lb_shift_group_get_shift (LbShiftGroup *self);

/* The shift that times typed now are of: the sheet's, or the one that recording will open. */
LbShift lb_shift_group_shift_of_times (LbShiftGroup *self);

/* Records @draft in the shift; says what went wrong itself. */
gboolean lb_shift_group_record (LbShiftGroup *self, const LbDraft *draft);

/* The same of several, as one act. */
gboolean lb_shift_group_record_all (LbShiftGroup *self, const LbDraft *drafts, gsize n_drafts);

/* What a field is about and the unit it is typed in, "Oxygen used (cu ft)". */
void lb_shift_group_caption (LbShiftGroup *self,
                             LbField *field,
                             const char *title,
                             LbQuantity quantity);

/* Reads a field that must hold an amount over zero; marks it when it does not. */
gboolean lb_shift_group_read_amount (LbShiftGroup *self,
                                     LbField *field,
                                     LbQuantity quantity,
                                     double *out_si);

/* The same of one that may be empty, which leaves @out_si alone. */
gboolean lb_shift_group_read_if_said (LbShiftGroup *self,
                                      LbField *field,
                                      LbQuantity quantity,
                                      double *out_si);

G_END_DECLS
