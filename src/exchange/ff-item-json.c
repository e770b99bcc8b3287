/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-item-json.h"

#include "ff-record-json.h"

void
ff_item_json_write (FfJson *json, const FfItem *item)
{
  const FfFields *own = ff_item_kind_fields (item->kind);

  ff_json_fields (json, &ff_item_fields, 0, item);
  ff_json_fields (json, &ff_item_state_fields, 0, item);
  if (own != NULL)
    ff_json_fields (json, own, 1, item);
}
