#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# with-display.sh COMMAND [ARGUMENT…]
# Runs a command on a virtual display and a session bus of its own, in a home of its own. Nothing of
# the caller's desktop is read or changed, so a test gives the same result on a developer's machine
# and on a bare one.
set -u

home=$(mktemp -d "${TMPDIR:-/tmp}/steelyard-test.XXXXXX") || exit 1
trap 'rm -rf "$home"' EXIT
mkdir -m 700 "$home/run" "$home/config" "$home/data" "$home/state" "$home/cache"

unset WAYLAND_DISPLAY DBUS_SESSION_BUS_ADDRESS AT_SPI_BUS_ADDRESS GTK_THEME GTK_MODULES LANGUAGE \
  STEELYARD_CLOCK
export HOME="$home" XDG_RUNTIME_DIR="$home/run" XDG_CONFIG_HOME="$home/config" \
  XDG_DATA_HOME="$home/data" XDG_STATE_HOME="$home/state" XDG_CACHE_HOME="$home/cache"
# The cairo renderer: pictures do not depend on a driver. The test accessibility backend lets a test
# in the same process ask for names and roles; a drive from outside sets GTK_A11Y=atspi itself.
export GDK_BACKEND=x11 GSK_RENDERER=cairo GSETTINGS_BACKEND=memory GTK_A11Y="${SY_TEST_A11Y:-test}" \
  LC_ALL="${SY_TEST_LOCALE:-C.UTF-8}" TZ=UTC \
  G_DEBUG="${SY_TEST_G_DEBUG:-fatal-criticals}" G_ENABLE_DIAGNOSTIC=1 NO_AT_BRIDGE=0

xvfb-run -a -s "-screen 0 ${SY_TEST_SCREEN:-1280x900x24} -nolisten tcp" dbus-run-session -- "$@"
