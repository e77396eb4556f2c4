/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Rows of comma-separated values as RFC 4180 has them: CRLF behind each record, quotes where a cell
 * needs them, UTF-8. Start an empty GString, add cells, end each row. */

/* Adds a text, guarded so that no spreadsheet takes it for a formula: an apostrophe stands before
 * what begins with = + - @, a tab or a carriage return. Reading our own lists takes it off. */
void lb_csv_add_text (GString *csv, const char *text);

/* Adds a number with "." and as many decimals as tell it apart; an empty cell for NAN. */
void lb_csv_add_number (GString *csv, double value);

void lb_csv_end_row (GString *csv);

G_END_DECLS
