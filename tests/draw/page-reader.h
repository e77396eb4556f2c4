/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/page.h"
#include "draw/picture.h"

G_BEGIN_DECLS

/* What a page says and where its ink is, for the tests of pages. @data is for the page's @func. */

/* What pdftotext says of the pages; NULL, and the test failed, without it. */
char *page_to_text (LbPictureFunc func,
                    LbPaper paper,
                    gsize n_pages,
                    gpointer data,
                    const char *option);

/* What a reader of the PDF finds, in the order it was written and without any white space, since
 * lines break where they like; the questions below leave white space out of @part too. */
char *page_read (LbPictureFunc func, LbPaper paper, gsize n_pages, gpointer data);

gboolean page_has (const char *squeezed, const char *part);
void page_assert_has (const char *squeezed, const char *part);
guint page_count (const char *squeezed, const char *part);

void page_assert_on_sheet (LbPictureFunc func, gsize page, LbPaper paper, gpointer data);

/* Grey all over, and the margin of the sheet left white. */
void page_assert_grey (LbPictureFunc func, gsize page, LbPaper paper, gpointer data);

G_END_DECLS
