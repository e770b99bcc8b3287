/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A list to read: its head, its sections, the warnings before what they guard. */
#pragma once

#include "ff-list-book.h"

#include <gtk/gtk.h>

/* Fills a box anew. */
void ff_list_reader_fill (GtkBox *box, const FfListEntry *entry);
