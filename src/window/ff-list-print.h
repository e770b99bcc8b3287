/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "ff-checklist.h"
#include "ff-page.h"

/* Prints a list, all of its items, by the system's dialog over the window of the page. */
void ff_list_print (const FfChecklist *list, FfPage *page);

/* The operation alone, to be run to a file. FF_ERROR_OUTPUT when there is no font to print with. */
GtkPrintOperation *ff_list_print_new (const FfChecklist *list,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
