/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "exchange/text-table.h"

#include <gio/gio.h>
#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* What tests of the shell command share: a scratch folder that the command runs in, and what it
 * said. */
typedef struct
{
  int status;
  char *out; /* stdout */
  char *err; /* stderr */
} Said;

void said_clear (Said *said);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Said, said_clear)

/* Makes the scratch folder; remove it with shell_tear_down(). */
void shell_set_up (void);
void shell_tear_down (void);

/* A path in the scratch folder; to be freed. */
char *shell_path (const char *name);
void shell_write (const char *name, const char *text);
GBytes *shell_bytes (const char *name);

/* Runs a program in the scratch folder, arguments up to %NULL. */
void shell_run (Said *said, const char *program, ...) G_GNUC_NULL_TERMINATED;

/* Runs lastbent-tool, which has to end with @status; @line is split at blanks, quotes as in sh. */
void shell_tool (Said *said, int status, const char *line);

/* The same, when only the status counts. */
void shell_tool_ends (int status, const char *line);

/* The demo job as "demo" in the scratch folder, made once and copied. */
void shell_make_demo (void);

/* The test ends unless @part stands in @text. */
void shell_assert_says (const char *text, const char *part);

/* What was said as JSON; the test ends when it is none. */
JsonNode *shell_parse_json (const char *text);

/* What was said as a table; each of its rows must be as long as the first. */
LbTextTable *shell_parse_csv (const char *text);

G_END_DECLS
