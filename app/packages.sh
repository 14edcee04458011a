# SPDX-License-Identifier: MIT
# Sourced by app/run and tests/run: the Debian packages that they need, and their installation.

# To build both programs and to run the window.
steelyard_build_packages=(
  build-essential pkg-config meson ninja-build python3 gettext
  libgtk-4-dev libjson-glib-dev libsqlite3-dev libssl-dev libcmocka-dev
  adwaita-icon-theme fonts-dejavu-core librsvg2-common
  desktop-file-utils appstream # the build looks for the validators of its tests
)

# To run the tests as well: a virtual display, a session bus, accessibility, readers of PDF and
# pictures.
steelyard_test_packages=(
  xvfb xauth dbus at-spi2-core python3-gi gir1.2-atspi-2.0 xdotool imagemagick
  poppler-utils
)

# steelyard_install PACKAGE…
# Installs what is missing and says so; quick and silent when nothing is. Returns 1 with a message
# when it cannot.
steelyard_install ()
{
  local package installed missing=() as_root=()

  if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
    echo "This is no Debian system: install the equivalents of these packages yourself:" >&2
    echo "  $*" >&2
    return 0
  fi
  installed=$(dpkg-query -W -f='${db:Status-Status} ${Package}\n' "$@" 2>/dev/null) || true
  for package in "$@"; do
    grep -qxF "installed $package" <<<"$installed" || missing+=("$package")
  done
  [ ${#missing[@]} -gt 0 ] || return 0

  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null; then
      echo "Debian packages are missing, and neither root nor sudo is at hand to install them:" >&2
      echo "  ${missing[*]}" >&2
      echo "As root:  apt-get install --no-install-recommends ${missing[*]}" >&2
      return 1
    fi
    as_root=(sudo)
    # Without a terminal nobody can type a password: fail at once instead of waiting for one.
    [ -t 0 ] || as_root+=(-n)
  fi

  echo "Installing Debian packages: ${missing[*]}" >&2
  {
    "${as_root[@]}" apt-get -q update &&
      "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -q -y \
        -o DPkg::Lock::Timeout=120 -o Acquire::http::Timeout=60 -o Dpkg::Use-Pty=0 \
        install --no-install-recommends "${missing[@]}"
  } >&2 </dev/null || {
    echo "The packages could not be installed (see above): ${missing[*]}" >&2
    return 1
  }
}

# steelyard_setup DIRECTORY [MESON OPTION…]
# Configures a build directory once; later runs reconfigure by themselves when a meson.build
# changes. A directory that was left half configured, or whose checkout has moved, is made anew.
steelyard_setup ()
{
  local directory=$1
  shift
  if [ -f "$directory/build.ninja" ] &&
     [ "$(cat "$directory/steelyard-setup" 2>/dev/null)" = "$PWD $*" ]; then
    return 0
  fi
  rm -rf "$directory"
  meson setup "$directory" "$@" >&2 && echo "$PWD $*" >"$directory/steelyard-setup"
}
