/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/book.h"
#include "book/fold.h"
#include "book/setting-table.h"
#include "draw/picture-text.h"
#include "exchange/caution-list.h"

#include <glib.h>

G_BEGIN_DECLS

/* What a command tells the shell. */
typedef enum {
  LB_EXIT_DONE = 0,
  LB_EXIT_REFUSED = 1, /* the reason is on stderr, nothing was changed */
  LB_EXIT_USAGE = 2,   /* the command line cannot be understood */
} LbExit;

/* One command of lastbent-tool; command-….c has one each. */
typedef struct
{
  const char *name;
  const char *arguments; /* msgid: "FILE PILE" */
  const char *summary;   /* msgid: a sentence, for the list of commands */
  const char *more;      /* msgid: what else --help says, NULL for nothing */
  const GOptionEntry *options;
  int least, most; /* arguments without options; -1 for any number */
  LbExit (*run) (int n_args, char **args);
} LbCommand;

extern const LbCommand lb_command_demo;
extern const LbCommand lb_command_new;
extern const LbCommand lb_command_take_piles;
extern const LbCommand lb_command_take_cautions;
extern const LbCommand lb_command_take_dive_table;
extern const LbCommand lb_command_take_crane_chart;
extern const LbCommand lb_command_take_soil;
extern const LbCommand lb_command_take_delay_causes;
extern const LbCommand lb_command_piles;
extern const LbCommand lb_command_cut;
extern const LbCommand lb_command_burn;
extern const LbCommand lb_command_record;
extern const LbCommand lb_command_divers;
extern const LbCommand lb_command_totals;
extern const LbCommand lb_command_summary;
extern const LbCommand lb_command_draw;
extern const LbCommand lb_command_print;
extern const LbCommand lb_command_sign;
extern const LbCommand lb_command_check, lb_command_packet, lb_command_join;
extern const LbCommand lb_command_copies;
extern const LbCommand lb_command_recover;
extern const LbCommand lb_command_findings;
extern const LbCommand lb_command_answer;

/* The command that takes the list of such a table. */
const LbCommand *lb_tool_take_command (LbSettingTable table);

/* A job file in memory, for commands that work on one. */
typedef struct
{
  LbBook *book;
  LbLedger *ledger;
  LbFold *fold;
  LbCrewCautions *cautions; /* the crew's own, NULL for none */
} LbToolJob;

gboolean lb_tool_job_open (LbToolJob *job, const char *path, LbBookMode mode, GError **error);
gboolean lb_tool_job_read (LbToolJob *job, GError **error); /* again, after recording */

/* The crew's own cautions from a list (exchange/caution-list), for the plans of this job; @path may be
 * NULL, which adds none. Once a job. */
gboolean lb_tool_job_add_cautions (LbToolJob *job, const char *path, GError **error);

/* Stores a setting of the job that is taken from a file; "" puts it away. */
gboolean lb_tool_store_setting (const LbToolJob *job,
                                const char *key,
                                const char *text,
                                GError **error);

/* What the plans of this job rest on, its crew's cautions among it. Borrows from the job. */
LbCutBasis lb_tool_job_basis (const LbToolJob *job);

void lb_tool_job_clear (LbToolJob *job);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LbToolJob, lb_tool_job_clear)

/* How the job speaks in a shell: its units, plain numbers. */
LbVoice lb_tool_voice (const LbToolJob *job);

/* The pile called @mark, -1 with an error that says how to find out the marks. */
int lb_tool_find_pile (const LbToolJob *job, const char *mark, GError **error);

/* "us" or "metric"; @text may be NULL, which leaves @out_units alone. */
gboolean lb_tool_read_units (const char *text, LbUnits *out_units, GError **error);

/* "2026-07-11" to a Julian day. */
gboolean lb_tool_read_day (const char *text, guint32 *out_day, GError **error);

/* Say why on stderr; for return. */
LbExit lb_tool_refuse (const GError *error);
LbExit lb_tool_misuse (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* Text for machines: the bytes as they are, whatever the locale. */
LbExit lb_tool_put (const char *text);

G_END_DECLS
