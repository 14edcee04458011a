/* SPDX-License-Identifier: MIT */

/* Linked into sanitized test programs only: a module (a graphics driver, say) that was unloaded
   before the leak check cannot be named in a suppression any more, so modules stay loaded. */

int dlclose (void *handle);

int
dlclose (void *handle)
{
  (void) handle;
  return 0;
}
