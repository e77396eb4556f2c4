/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/picture-text.h"

G_BEGIN_DECLS

/* Quantities as one voice says them; the returned strings are to be freed. */

/* "9,850 lb"; "–" for NAN; "under 1 min" for a time that is shorter. */
char *lb_voice_quantity (const LbVoice *voice, LbQuantity quantity, double si);

/* The number alone, in the voice's unit and with the quantity's decimals. */
char *lb_voice_quantity_number (const LbVoice *voice, LbQuantity quantity, double si);

/* An elevation shows its side of the datum: "+3.5 ft", "−22 ft". */
char *lb_voice_elevation (const LbVoice *voice, double si);

/* A plain number with at most @decimals of them. */
char *lb_voice_number (const LbVoice *voice, double value, int decimals);

G_END_DECLS
