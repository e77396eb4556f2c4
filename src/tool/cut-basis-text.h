/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tool/command.h"
#include "trade/cut-plan.h"

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* What a figure of a cut plan is made of, for the shell. */

/* @file: as the command was given it, for the words that say what to type */
void lb_tool_explain (GString *text,
                      const LbToolJob *job,
                      const char *file,
                      guint pile,
                      const LbCutBasis *basis,
                      const LbCutPlan *plan,
                      LbFigureId id);

/* The same as members of the object begun: "basis", an object a figure. */
void lb_json_add_basis (JsonBuilder *builder, const LbPile *pile, const LbAssumptions *assumptions);

/* The figure with that key; FALSE with an error that lists the keys. */
gboolean lb_tool_find_figure (const char *key, LbFigureId *out_id, GError **error);

G_END_DECLS
