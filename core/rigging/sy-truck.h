/* SPDX-License-Identifier: MIT */
#ifndef SY_TRUCK_H
#define SY_TRUCK_H

#include <stdbool.h>

/*
 * What a fork truck may carry with the centre of the load farther out than its plate was made for. Lift height and
 * attachments lower the capacity further: only the data plate knows by how much.
 * Masses and lengths in units of the caller's choice; distances from the face of the forks, over 0.
 */

/**
 * sy_truck_capacity:
 * The load moment rule: rating × rated centre / actual centre, never over the rating.
 * Parameters:   rating  of the plate, at the lift height and with the attachment.
 * Source:       29 CFR 1910.178 Appendix A-5: understates what a truck was designed for, so it is the one to judge by.
 */
double sy_truck_capacity (double rating, double rated_centre, double actual_centre);

/**
 * sy_truck_capacity_fulcrum:
 * Moments about the front axle: rating × (x + rated centre) / (x + actual centre), never over the rating.
 * Parameters:   fulcrum  x, from the front axle to the face of the forks, 0 or more.
 * Source:       statics; at x = 0 it is the load moment rule, else it allows more.
 */
double sy_truck_capacity_fulcrum (double rating, double rated_centre, double actual_centre, double fulcrum);

/**
 * sy_truck_side_within:
 * Whether the centre of the load stays within the side shift that the plate allows, either way; equal is within (1e-9).
 * Parameters:   side_limit  of the plate, 0 or more.
 * Source:       29 CFR 1910.178 Appendix A (the centre must stay within the stability triangle); the limit is the
 *               plate's.
 */
bool sy_truck_side_within (double side_shift, double side_limit);

#endif
