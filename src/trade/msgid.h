/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Words that a person will read are written in English here and marked for the translators; the
 * rooms that talk to people look them up, since trade knows no locale. */
#define N_(string)           string
#define NC_(context, string) string
