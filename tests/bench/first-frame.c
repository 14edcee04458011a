/* SPDX-License-Identifier: MIT */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <stdio.h>
#include <time.h>
#include <unistd.h>

#include <gtk/gtk.h>

/*
 * Preloaded into a GTK program: prints the milliseconds from just before main to the end of the first painted
 * frame of the first window presented, and ends the program. The program itself needs no hook for it.
 */

static struct timespec start;

__attribute__ ((constructor)) static void
note_start (void)
{
  clock_gettime (CLOCK_MONOTONIC, &start);
}

static void
on_after_paint (GdkFrameClock *clock, gpointer user_data)
{
  struct timespec now;

  (void) clock;
  (void) user_data;
  clock_gettime (CLOCK_MONOTONIC, &now);
  printf ("first-frame %.3f\n",
          (double) (now.tv_sec - start.tv_sec) * 1e3 + (double) (now.tv_nsec - start.tv_nsec) / 1e6);
  fflush (stdout);
  _exit (0);
}

void
gtk_window_present (GtkWindow *window)
{
  void (*present) (GtkWindow *);

  /* ISO C has no conversion from an object pointer to a function; POSIX prescribes this one. */
  *(void **) &present = dlsym (RTLD_NEXT, "gtk_window_present");
  present (window);
  g_signal_connect (gtk_widget_get_frame_clock (GTK_WIDGET (window)), "after-paint",
                    G_CALLBACK (on_after_paint), NULL);
}
