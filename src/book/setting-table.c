/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/setting-table.h"

#include "book/caution-text.h"
#include "book/crane-chart-text.h"
#include "book/delay-causes.h"
#include "book/dive-table-text.h"
#include "book/ground-text.h"
#include "book/ledger.h"
#include "trade/msgid.h"

static gboolean
check_dive (const char *text, GError **error)
{
  LbDiveTable table;

  return lb_dive_table_from_text (text, &table, error);
}

static gboolean
check_crane (const char *text, GError **error)
{
  LbCraneChart chart;

  return lb_crane_chart_from_text (text, &chart, error);
}

static gboolean
check_ground (const char *text, GError **error)
{
  LbGround ground;

  return lb_ground_from_text (text, &ground, error);
}

static gboolean
check_cautions (const char *text, GError **error)
{
  g_autoptr (GStringChunk) texts = g_string_chunk_new (1024);
  LbCautionRow rows[LB_CAUTION_CREW_ROWS_MAX];
  gsize n;

  return lb_cautions_from_text (text, texts, rows, &n, error);
}

static gboolean
check_delays (const char *text, GError **error)
{
  g_auto (GStrv) causes = lb_delay_causes_from_text (text, error);

  return causes != NULL;
}

static const struct
{
  const char *key;
  const char *title; /* msgid */
  gboolean has_decimals;
  gboolean (*check) (const char *text, GError **error);
  const char *heading[2]; /* by LbUnits */
} tables[LB_N_SETTING_TABLES] = {
  [LB_TABLE_DIVE] = { LB_SETTING_DIVE_TABLE,
                      N_ ("The no-stop table"),
                      FALSE,
                      check_dive,
                      { "fsw,nostop", "msw,nostop" } },
  [LB_TABLE_CRANE] = { LB_SETTING_CRANE_CHART,
                       N_ ("The crane’s chart"),
                       TRUE,
                       check_crane,
                       { "radius (ft),capacity (lb)", "radius (m),capacity (kg)" } },
  [LB_TABLE_GROUND] = { LB_SETTING_GROUND,
                        N_ ("The list of the ground’s layers"),
                        TRUE,
                        check_ground,
                        { "to (ft),soil,strength (psf),in water (pcf)",
                          "to (m),soil,strength (kPa),in water (kg/m3)" } },
  [LB_TABLE_CAUTIONS] = { LB_SETTING_CAUTIONS,
                          N_ ("The list of cautions"),
                          FALSE,
                          check_cautions,
                          { "key,severity,when,words,source", "key,severity,when,words,source" } },
  [LB_TABLE_DELAYS] = { LB_SETTING_DELAY_CAUSES,
                        N_ ("The list of causes of delay"),
                        FALSE,
                        check_delays,
                        { "cause", "cause" } },
};

const char *
lb_setting_table_key (LbSettingTable table)
{
  g_return_val_if_fail (table < LB_N_SETTING_TABLES, NULL);

  return tables[table].key;
}

const char *
lb_setting_table_title (LbSettingTable table)
{
  g_return_val_if_fail (table < LB_N_SETTING_TABLES, NULL);

  return tables[table].title;
}

gboolean
lb_setting_table_find (const char *key, LbSettingTable *out_table)
{
  g_return_val_if_fail (key != NULL && out_table != NULL, FALSE);

  for (guint i = 0; i < LB_N_SETTING_TABLES; i++) {
    if (g_str_equal (tables[i].key, key)) {
      *out_table = (LbSettingTable) i;
      return TRUE;
    }
  }
  return FALSE;
}

const char *
lb_setting_table_heading (LbSettingTable table, LbUnits units)
{
  g_return_val_if_fail (table < LB_N_SETTING_TABLES, NULL);

  return tables[table].heading[units];
}

gboolean
lb_setting_table_has_decimals (LbSettingTable table)
{
  g_return_val_if_fail (table < LB_N_SETTING_TABLES, FALSE);

  return tables[table].has_decimals;
}

gboolean
lb_setting_table_check (LbSettingTable table, const char *text, GError **error)
{
  g_return_val_if_fail (table < LB_N_SETTING_TABLES, FALSE);
  g_return_val_if_fail (text != NULL, FALSE);

  return *text == '\0' || tables[table].check (text, error);
}
