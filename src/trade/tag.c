/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/tag.h"

#include "trade/msgid.h"

static const char *const names[LB_N_TAGS] = {
  [LB_TAG_STANDARD] = N_ ("standard"),
  [LB_TAG_COMPUTED] = N_ ("computed"),
  [LB_TAG_COMMON_PRACTICE] = N_ ("common practice"),
  [LB_TAG_MEMORY] = N_ ("from memory"),
  [LB_TAG_JOB] = N_ ("set for this job"),
};

const char *
lb_tag_name (LbTag tag)
{
  g_return_val_if_fail (tag < LB_N_TAGS, NULL);

  return names[tag];
}
