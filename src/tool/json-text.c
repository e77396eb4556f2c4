/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tool/json-text.h"

#include "trade/cut-plan.h"
#include "trade/pile-bars.h"
#include "trade/pile-taper.h"

#include <math.h>

static const char *
si_suffix (LbQuantity quantity)
{
  static const char *const suffixes[LB_N_QUANTITIES] = {
    [LB_QUANTITY_COUNT] = "count",
    [LB_QUANTITY_LENGTH] = "m",
    [LB_QUANTITY_SIZE] = "m",
    [LB_QUANTITY_STEEL_AREA] = "m2",
    [LB_QUANTITY_TIME] = "s",
    [LB_QUANTITY_SHORT_TIME] = "s",
    [LB_QUANTITY_MASS] = "kg",
    [LB_QUANTITY_FORCE] = "n",
    [LB_QUANTITY_PRESSURE] = "pa",
    [LB_QUANTITY_STRESS] = "pa",
    [LB_QUANTITY_GAS] = "m3",
    [LB_QUANTITY_GAS_FLOW] = "m3_per_s",
    [LB_QUANTITY_DENSITY] = "kg_per_m3",
    [LB_QUANTITY_ANGLE] = "rad",
    [LB_QUANTITY_SPEED] = "m_per_s",
    [LB_QUANTITY_SHARE] = "share",
    [LB_QUANTITY_BURN_RATE] = "s_per_m2",
    [LB_QUANTITY_PRESSURE_PER_LENGTH] = "pa_per_m",
    [LB_QUANTITY_RATIO] = "ratio",
    [LB_QUANTITY_CURRENT] = "a",
    [LB_QUANTITY_VOLTAGE] = "v",
    [LB_QUANTITY_CONDUCTOR] = "m2",
  };

  return suffixes[quantity];
}

char *
lb_json_name (const char *key, const char *part, LbQuantity quantity)
{
  char *name = part != NULL ? g_strconcat (key, "_", part, "_", si_suffix (quantity), NULL)
                            : g_strconcat (key, "_", si_suffix (quantity), NULL);

  return g_strdelimit (name, "- ", '_');
}

void
lb_json_add_number (JsonBuilder *builder, double value)
{
  if (isfinite (value))
    json_builder_add_double_value (builder, value);
  else
    json_builder_add_null_value (builder);
}

void
lb_json_add_member (JsonBuilder *builder, char *name, double value)
{
  json_builder_set_member_name (builder, name);
  lb_json_add_number (builder, value);
  g_free (name);
}

void
lb_json_add_range (JsonBuilder *builder, const char *key, LbQuantity quantity, const LbRange *range)
{
  lb_json_add_member (builder, lb_json_name (key, NULL, quantity), range->likely);
  lb_json_add_member (builder, lb_json_name (key, "low", quantity), range->low);
  lb_json_add_member (builder, lb_json_name (key, "high", quantity), range->high);
}

void
lb_json_add_text (JsonBuilder *builder, const char *name, const char *text)
{
  json_builder_set_member_name (builder, name);
  if (text != NULL)
    json_builder_add_string_value (builder, text);
  else
    json_builder_add_null_value (builder);
}

void
lb_json_add_count (JsonBuilder *builder, const char *name, gint64 count)
{
  json_builder_set_member_name (builder, name);
  json_builder_add_int_value (builder, count);
}

/* Bars are numbered from 1 where people and programs outside see them. */
static void
add_bars (JsonBuilder *builder, const char *name, LbBarSet bars)
{
  json_builder_set_member_name (builder, name);
  json_builder_begin_array (builder);
  for (int bar = 0; bar < LB_BARS_MAX; bar++) {
    if (bars & LB_BAR (bar))
      json_builder_add_int_value (builder, bar + 1);
  }
  json_builder_end_array (builder);
}

/* [[x, y], …] from the centre, by number: to the right of the lean, and with it. */
static void
add_places (JsonBuilder *builder, const LbPile *pile, const LbOutline *at_cut)
{
  LbPoint places[LB_BARS_MAX];

  if (pile->n_bars > 0)
    lb_pile_bars_place (pile, at_cut, places);
  json_builder_set_member_name (builder, "bar_places_m");
  json_builder_begin_array (builder);
  for (guint bar = 0; bar < pile->n_bars; bar++) {
    json_builder_begin_array (builder);
    json_builder_add_double_value (builder, places[bar].x);
    json_builder_add_double_value (builder, places[bar].y);
    json_builder_end_array (builder);
  }
  json_builder_end_array (builder);
}

static void
add_flags (JsonBuilder *builder, guint flags)
{
  json_builder_set_member_name (builder, "flags");
  json_builder_begin_array (builder);
  for (guint bit = 1; bit <= LB_FLAG_LAST; bit <<= 1) {
    if (flags & bit)
      json_builder_add_string_value (builder, lb_pile_flag_words ((LbPileFlag) bit));
  }
  json_builder_end_array (builder);
}

void
lb_json_add_pile (JsonBuilder *builder, const LbFold *fold, guint pile)
{
  const LbPile *facts = &fold->piles[pile];
  const LbPileState *state = &fold->states[pile];
  const double width_m = facts->outline.width_m;
  const double cut_m = lb_pile_cut_elevation (facts, &fold->assumptions);
  const LbOutline at_cut = lb_pile_outline_at (facts, cut_m);

  lb_json_add_text (builder, "mark", facts->mark);
  lb_json_add_text (builder, "bent", facts->bent);
  lb_json_add_text (builder, "row", facts->row);
  lb_json_add_text (builder, "note", facts->note);
  lb_json_add_member (builder, g_strdup ("x_m"), facts->x_m);
  lb_json_add_member (builder, g_strdup ("y_m"), facts->y_m);
  lb_json_add_text (builder, "shape",
                    lb_pile_says (facts, LB_FACT_SHAPE) ? lb_shape_name (facts->outline.shape)
                                                        : NULL);
  lb_json_add_member (builder, g_strdup ("width_m"), width_m > 0 ? width_m : (double) NAN);
  lb_json_add_member (builder, g_strdup ("tip_width_m"), facts->tip_width_m);
  lb_json_add_member (builder, g_strdup ("width_at_cut_m"),
                      at_cut.width_m > 0 ? at_cut.width_m : (double) NAN);
  lb_json_add_member (builder, g_strdup ("void_m"), facts->outline.void_m);
  lb_json_add_text (builder, "bar", facts->bar != NULL ? facts->bar->name : NULL);
  lb_json_add_count (builder, "bars_count", facts->n_bars);
  lb_json_add_member (builder, g_strdup ("bar_inset_m"), lb_pile_bar_inset (facts));
  add_places (builder, facts, &at_cut);
  lb_json_add_member (builder, g_strdup ("batter_run_per_rise"),
                      lb_pile_says (facts, LB_FACT_BATTER) ? facts->batter : (double) NAN);
  lb_json_add_member (builder, g_strdup ("bearing_rad"),
                      lb_pile_says (facts, LB_FACT_BEARING) ? facts->bearing_rad : (double) NAN);
  json_builder_set_member_name (builder, "is_to_be_drawn_whole");
  json_builder_add_boolean_value (builder, facts->is_to_be_drawn);
  lb_json_add_member (builder, g_strdup ("head_m"), facts->head_m);
  lb_json_add_member (builder, g_strdup ("cut_m"), cut_m);
  lb_json_add_member (builder, g_strdup ("mudline_m"), facts->mudline_m);
  lb_json_add_member (builder, g_strdup ("toe_m"), facts->toe_m);
  lb_json_add_text (builder, "step", lb_step_name (state->step));
  lb_json_add_count (builder, "bars_left_count", state->n_left);
  add_bars (builder, "bars_burned", state->burned & ~state->gone);
  add_bars (builder, "bars_found_gone", state->gone);
  lb_json_add_count (builder, "bars_burned_unplaced_count", state->n_unplaced);
  add_flags (builder, state->flags);
}

LbExit
lb_json_put (JsonBuilder *builder)
{
  g_autoptr (JsonNode) root = json_builder_get_root (builder);
  g_autofree char *text = json_to_string (root, TRUE);
  g_autofree char *line = g_strconcat (text, "\n", NULL);

  return lb_tool_put (line);
}
