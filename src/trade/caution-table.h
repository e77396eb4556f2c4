/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/caution-when.h"

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  LB_SEVERITY_NOTE,
  LB_SEVERITY_CAUTION,
  LB_SEVERITY_DANGER,
} LbSeverity;

/* Of those built in, and of a crew's own: more do not fit on one card. */
#define LB_CAUTION_ROWS_MAX      60
#define LB_CAUTION_CREW_ROWS_MAX 60

/* What must be said before a cut or a lift, a row a caution. data/cautions.csv is the same table for
 * people: a safety officer reads it there, and a crew adds rows of its own in a second list of that
 * form (exchange/caution-list). A test holds the two equal. */
typedef struct
{
  const char *key; /* "rig-before": stable, what a tick is kept by */
  LbSeverity severity;
  LbCautionWhen when;
  const char *words;  /* msgid; blanks as "{bar}" */
  const char *source; /* msgid: the rule, or "common practice" */
} LbCautionRow;

/* The built-in rows, at most %LB_CAUTION_ROWS_MAX, gravest first. */
const LbCautionRow *lb_caution_rows (gsize *out_n);

#define LB_CAUTION_KEY_MOST 40

/* Whether @key has the form of one: small letters, digits and hyphens, a letter first. */
gboolean lb_is_caution_key (const char *key);

/* "danger", "caution", "note": in files */
const char *lb_severity_key (LbSeverity severity);
gboolean lb_severity_from_key (const char *key, LbSeverity *out_severity);

G_END_DECLS
