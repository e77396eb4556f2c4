/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What a seal says, as the text that is its entry's note (docs/file-format.md, "Seals"):
 *
 *   lastbent seal 1
 *   count ROWS                rows under a signature in this file, with these
 *   after ID SHA256           a seal that this one comes after; one line each, by id
 *   rows TAG FROM TO          what it covers: the rows TAG-FROM to TAG-TO; by name
 *   checks …                  three characters a covered row, in that order; may be left out
 *   sha256 SHA256             of all that; see seal.c */

#define LB_SHA256_HEX 64
#define LB_CHECK_SIZE 3 /* characters a row */

typedef struct
{
  char *id;
  char hash[LB_SHA256_HEX + 1];
} LbSealLink;

typedef struct
{
  char *tag;
  guint64 from, to;
} LbSealSpan;

typedef struct
{
  guint64 count;
  GArray *after; /* LbSealLink */
  GArray *spans; /* LbSealSpan */
  GString *checks;
  char hash[LB_SHA256_HEX + 1];
} LbSealText;

LbSealText *lb_seal_text_new (void);
void lb_seal_text_free (LbSealText *seal);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbSealText, lb_seal_text_free)

void lb_seal_text_add_link (LbSealText *seal, const char *id, const char *hash);
void lb_seal_text_add_span (LbSealText *seal, const char *tag, guint64 from, guint64 to);

/* All lines but the last, which are what is hashed. */
char *lb_seal_text_head (const LbSealText *seal);

/* NULL when @note is not, to the letter, what a seal says. */
LbSealText *lb_seal_text_read (const char *note);

G_END_DECLS
