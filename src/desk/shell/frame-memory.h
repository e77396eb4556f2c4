/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/**
 * lb_frame_memory_keep:
 *
 * Keeps the memory of one frame for the next. To show a picture, cairo takes and gives back a
 * block as large as the window in each frame. The C library by default hands such a block back to
 * the system and takes it again page by page, which can cost more than all the drawing.
 *
 * To be called once, before any other thread.
 */
void lb_frame_memory_keep (void);
