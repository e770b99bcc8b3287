/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "ff-checklist.h"
#include "ff-page.h"

/* Prints a list, all of its items, by the system's dialog over the window of the page. */
void ff_list_print (const FfChecklist *list, FfPage *page);

/* The operation alone, to be run to a file. */
GtkPrintOperation *ff_list_print_new (const FfChecklist *list) G_GNUC_WARN_UNUSED_RESULT;
