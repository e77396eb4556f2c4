/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tool/command.h"

G_BEGIN_DECLS

/* What the options of “record” say; NULL where one is not given. */
typedef struct
{
  char *day, *watch, *who, *pile, *note;
  char *correct;
  char *stub;
  char *depth, *left_surface, *left_bottom, *reached_surface;
  char *mode, *visibility, *work, *rods, *oxygen;
  char *borne_by, *done;
  int count;
} LbRecordOptions;

/* An act in the making. */
typedef struct
{
  const LbToolJob *job;
  const LbRecordOptions *options;
  const LbShift *shift; /* the ledger's, or one that is opened with what is recorded */
  GArray *drafts;       /* LbDraft */
  GStringChunk *strings;
} LbRecord;

/* Appends the drafts of one kind of entry. */
typedef gboolean (*LbRecordFill) (LbRecord *record, int n_args, char **args, GError **error);

/* record-draft.c: what several kinds need */
LbDraft *lb_record_add (LbRecord *record, LbEntryKind kind);
gboolean lb_record_set_pile (const LbRecord *record,
                             LbDraft *draft,
                             const char *mark,
                             GError **error);
gboolean lb_record_set_pile_option (const LbRecord *record, LbDraft *draft, GError **error);
gboolean lb_record_read_amount (const LbRecord *record,
                                LbQuantity quantity,
                                const char *text,
                                double *out_si,
                                GError **error);
/* @text may be NULL, which leaves @out_us alone. */
gboolean lb_record_read_time (const LbRecord *record,
                              const char *text,
                              gint64 *out_us,
                              GError **error);
int lb_record_shift_index (const LbRecord *record); /* -1 for one that is opened with it */
/* Refuses when a gesture found everything on record already. */
gboolean lb_record_has_news (const LbRecord *record, GError **error);

/* record-pile.c: what was done at piles */
gboolean lb_record_step (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_bars (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_gone (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_burn_time (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_drawn (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_broken (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_set_aside (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_take_in (LbRecord *record, int n_args, char **args, GError **error);

/* record-dive.c: dives and the checks before them */
gboolean lb_record_dive (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_check (LbRecord *record, int n_args, char **args, GError **error);

/* record-shift.c: what else a shift says of itself */
gboolean lb_record_rods (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_oxygen (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_stock (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_delivery (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_delay (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_fault (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_condition (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_hours (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_crew (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_note (LbRecord *record, int n_args, char **args, GError **error);

/* record-job.c: facts, settings, and what is taken back */
gboolean lb_record_fact (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_setting (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_take_back (LbRecord *record, int n_args, char **args, GError **error);
gboolean lb_record_redo (LbRecord *record, int n_args, char **args, GError **error);

G_END_DECLS
