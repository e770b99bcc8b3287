/* SPDX-License-Identifier: GPL-3.0-or-later */
/* JSON from outside, looked through before a tree is made of it: the parser that makes the tree
 * accepts comments, keeps the last of two members of one name, and goes as deep as the file says. */
#pragma once

#include <glib.h>

/* The text is one JSON value as RFC 8259 has it: at most FF_JSON_DEPTH_MAX levels, no name twice in
 * one object, no NUL and no half of a surrogate pair. FF_ERROR_INPUT says line and column. */
gboolean ff_json_check (const char *text, GError **error);

#define FF_JSON_DEPTH_MAX 16
