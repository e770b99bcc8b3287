/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ff-thumbs.h"

#include "ff-preview.h"

static GtkWidget *
thumb_new (void)
{
  GtkWidget *child = gtk_flow_box_child_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *name = gtk_label_new (NULL);

  gtk_label_set_wrap (GTK_LABEL (name), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (name), 6);
  gtk_label_set_justify (GTK_LABEL (name), GTK_JUSTIFY_CENTER);
  gtk_widget_add_css_class (name, "field-label");
  gtk_box_append (GTK_BOX (box), ff_preview_new (FALSE));
  gtk_box_append (GTK_BOX (box), name);
  gtk_flow_box_child_set_child (GTK_FLOW_BOX_CHILD (child), box);
  return child;
}

static void
show_thumb (GtkFlowBoxChild *child, FfProof *proof, guint page)
{
  GtkWidget *preview = gtk_widget_get_first_child (gtk_flow_box_child_get_child (child));
  g_autofree char *name = ff_proof_page_name (proof, page, "\n");
  g_autofree char *words = ff_proof_page_words (proof, page);

  ff_preview_show (FF_PREVIEW (preview), proof, page);
  gtk_label_set_label (GTK_LABEL (gtk_widget_get_next_sibling (preview)), name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}

void
ff_thumbs_show (GtkFlowBox *thumbs, FfProof *proof)
{
  const guint n = ff_proof_n_pages (proof);
  GtkFlowBoxChild *child;

  while ((child = gtk_flow_box_get_child_at_index (thumbs, (int) n)) != NULL)
    gtk_flow_box_remove (thumbs, GTK_WIDGET (child));
  for (guint page = 0; page < n; page++)
    {
      child = gtk_flow_box_get_child_at_index (thumbs, (int) page);
      if (child == NULL)
        {
          gtk_flow_box_append (thumbs, thumb_new ());
          child = gtk_flow_box_get_child_at_index (thumbs, (int) page);
        }
      show_thumb (child, proof, page);
    }
}
