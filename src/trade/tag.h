/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* How far a figure can be trusted: where it comes from. Shown beside every default. */
typedef enum {
  LB_TAG_STANDARD,        /* printed in a standard, a manual, or a regulation */
  LB_TAG_COMPUTED,        /* geometry or physics worked out from the inputs */
  LB_TAG_COMMON_PRACTICE, /* what crews usually do; no published source */
  LB_TAG_MEMORY,          /* known, but not checked against a source */
  LB_TAG_JOB,             /* set by this job's own people */
} LbTag;

#define LB_N_TAGS (LB_TAG_JOB + 1)

/**
 * lb_tag_name:
 *
 * Returns: the tag in English ("standard", "computed", "common practice", "from memory",
 *   "set for this job"), a msgid for translation at the edge.
 */
const char *lb_tag_name (LbTag tag);

G_END_DECLS
