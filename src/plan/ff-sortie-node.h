/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Of this room only. A node of the search stands on the ground after a landing; the nodes of a
 * search are kept here, the most promising first, without those that another one outdoes. */
#pragma once

#include "ff-ground.h"
#include "ff-leg.h"

/* What two nodes must have in common to be compared; nothing but whole bytes. */
typedef struct {
  guint32 stage;
  guint32 first_charge; /* part-used batteries that have not flown yet */
  gint16 filter;
  gint8 class;          /* of the battery that is fitted and may be relaunched; -1: none */
  guint8 legs;          /* that it has flown */
  gint16 matched[FF_SORTIE_MAX_GROUPS]; /* filter of each group's last take; FF_UNFITTED */
} FfStand;

typedef struct _FfSortieNode FfSortieNode;
struct _FfSortieNode {
  FfStand stand;
  double cost, promise;
  const FfSortieNode *parent;
  const FfLeg *leg;    /* that led here; NULL: something was left out */
  FfSortieNode *alike; /* the next of the same stand */
  guint32 used;        /* a bit at the class's places per battery that has flown */
  guint32 born;        /* order of birth: ties go to the older */
  gint16 minute;
  gint16 left;         /* minutes of the battery that may be relaunched */
  gint16 land_by;      /* when that one has to be down, if it is not */
  gint8 flown_class;   /* class of the battery of `leg` */
  guint8 relaunched : 1;
  guint8 looked_at : 1; /* its children are known */
  guint8 outdone : 1;
  FfGround ground;
};

typedef struct {
  const FfSortieProblem *problem;
  const FfBatteries *batteries;
  GPtrArray *nodes;     /* all of them; owned */
  GPtrArray *heap;      /* those not yet looked at */
  GHashTable *by_stand; /* the list of each stand */
} FfSortieNodes;

void ff_sortie_nodes_init (FfSortieNodes *self,
                           const FfSortieProblem *problem,
                           const FfBatteries *batteries);
void ff_sortie_nodes_clear (FfSortieNodes *self);

/* Keeps a copy of the node unless another stands as well at no more cost. NULL: it was not kept. */
FfSortieNode *ff_sortie_nodes_add (FfSortieNodes *self, const FfSortieNode *node);

/* The most promising, taken out; NULL when there is none. */
FfSortieNode *ff_sortie_nodes_pop (FfSortieNodes *self);

gboolean ff_sortie_node_comes_before (const FfSortieNode *a, const FfSortieNode *b);
