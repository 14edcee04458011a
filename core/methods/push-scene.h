/* SPDX-License-Identifier: MIT */
#ifndef PUSH_SCENE_H
#define PUSH_SCENE_H

#include "sy-push-duty.h"
#include "sy-scene.h"

/* Someone at a cart on its slope, or at a die on its bolster, from the side. */

typedef struct
{
  const SyPushCase *push; /* way and forces                                     */
  double handle_height;   /* in the scene's unit                                */
  double slope_deg;       /* 0 to under 90                                      */
  bool downhill;          /* the way goes down                                  */
  double wheel_diameter;  /* mm or in; NAN: not known                           */
  double mass;            /* NAN: not known                                     */
  bool wheels;            /* a cart; else a die on a bolster                    */
  const char *slope_fact; /* path of the fact ("cart.slope"), NULL for none     */
  const char *mass_fact;
  const char *governing;  /* id of the limit that governs; NULL or "": none     */
} SyPushPicture;

/**
 * sy_push_scene_side:
 * Adds the view to a scene that was begun in the document's units: the ankles at 0,0, the load in front. Forces are
 * arrows to one scale: Fi to start it, Fs to keep it moving, Fh to hold it, Fb to stop it; the one that governs is
 * heavy. Sizes of cart and die are drawn by eye.
 */
void sy_push_scene_side (SyScene *scene, const SyPushPicture *picture);

#endif
