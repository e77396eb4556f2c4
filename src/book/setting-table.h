/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/quantity.h"

#include <glib.h>

G_BEGIN_DECLS

/* The settings of a job that hold a table as text; "" is none: then the plan goes by what is built in,
 * or says that it does not know. */
typedef enum {
  LB_TABLE_DIVE,     /* no-stop limits of the supervisor's own, lb_dive_table_from_text() */
  LB_TABLE_CRANE,    /* the crane's chart, lb_crane_chart_from_text() */
  LB_TABLE_GROUND,   /* layers of the ground, lb_ground_from_text() */
  LB_TABLE_CAUTIONS, /* the crew's own cautions, lb_cautions_from_text() */
  LB_TABLE_DELAYS,   /* the job's own causes of delay, lb_delay_causes_from_text() */
} LbSettingTable;

#define LB_N_SETTING_TABLES (LB_TABLE_DELAYS + 1)

const char *lb_setting_table_key (LbSettingTable table);   /* "crane-chart": in the file */
const char *lb_setting_table_title (LbSettingTable table); /* msgid: "The crane’s chart" */
gboolean lb_setting_table_find (const char *key, LbSettingTable *out_table);

/* The first line of one that somebody begins to type or to write a list of: "radius (ft),capacity (lb)". */
const char *lb_setting_table_heading (LbSettingTable table, LbUnits units);

/* Whether its cells may be written with a decimal comma or grouping; else they are taken to the
 * letter. */
gboolean lb_setting_table_has_decimals (LbSettingTable table);

/* Whether @text can be that setting, "" or a table that passes; %FALSE with a sentence when not. */
gboolean lb_setting_table_check (LbSettingTable table, const char *text, GError **error);

G_END_DECLS
