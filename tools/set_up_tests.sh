#!/usr/bin/env bash
# Gets what the tests drive and pip cannot give: Node with its packages, both browsers, and a PDF reader.
# Fails with one plain sentence that says what to install when something cannot be had; nothing is skipped.
# A browser of another name or in another place: CHROMIUM=/path FIREFOX=/path make test
set -euo pipefail
cd "$(dirname "$0")/.."

CHROMIUM_NAMES=(chromium chromium-browser google-chrome google-chrome-stable)
FIREFOX_NAMES=(firefox-esr firefox)

fail() {
  echo "set-up: $*" >&2
  exit 1
}

# The first of these commands that is there; fails without a word where none is.
first_of() {
  local name
  for name in "$@"; do
    command -v "$name" && return 0
  done
  return 1
}

# A snap is shut in: it cannot read the temporary folders in which the tests build their sites.
# Ubuntu's /usr/bin/firefox and /usr/bin/chromium-browser are small scripts that start one.
is_snap() {
  case "$(readlink -f "$1")" in
    /snap/* | */snap | */snapd/*) return 0 ;;
  esac
  head -c 2000 "$1" | grep -qa '/snap/bin/'
}

# Where a browser is: what the caller named, else the first that is installed and no snap.
browser() {
  local named="$1" name path
  shift
  if [ -n "$named" ]; then
    echo "$named"
    return 0
  fi
  for name in "$@"; do
    path="$(command -v "$name")" || continue
    is_snap "$path" && continue
    echo "$path"
    return 0
  done
  return 1
}

for named in "${CHROMIUM:-}" "${FIREFOX:-}"; do
  [ -z "$named" ] || [ -x "$named" ] || fail "there is no program $named; correct CHROMIUM or FIREFOX, or leave it unset"
done

missing=()
first_of node >/dev/null || missing+=(nodejs)
first_of npm >/dev/null || missing+=(npm)
browser "${CHROMIUM:-}" "${CHROMIUM_NAMES[@]}" >/dev/null || missing+=(chromium)
browser "${FIREFOX:-}" "${FIREFOX_NAMES[@]}" >/dev/null || missing+=(firefox-esr)
first_of pdftotext >/dev/null || missing+=(poppler-utils)

if [ "${#missing[@]}" -gt 0 ]; then
  first_of apt-get >/dev/null || fail "please install: ${missing[*]} (this script installs through apt-get, which is not here)"
  as_root=(env DEBIAN_FRONTEND=noninteractive)
  if [ "$(id -u)" -ne 0 ]; then
    first_of sudo >/dev/null || fail "please install as root: ${missing[*]} (sudo is not here)"
    # sudo drops what stands in the environment, so env comes after it.
    as_root=(sudo env DEBIAN_FRONTEND=noninteractive)
  fi
  echo "set-up: installing ${missing[*]}"
  "${as_root[@]}" apt-get -qq -o DPkg::Lock::Timeout=300 update \
    || fail "apt-get update failed (is there a network, and may you install?); please install: ${missing[*]}"
  without=()
  for package in "${missing[@]}"; do
    # No pipe: a reader that stops at its first hit ends the writer with a signal, which pipefail takes for a failure.
    known="$(LC_ALL=C apt-cache policy "$package")"
    [[ "$known" =~ Candidate:\ [^\(] ]] || without+=("$package")
  done
  [ "${#without[@]}" -eq 0 ] || fail "apt-get has no package for: ${without[*]}; please install that in another way" \
    "(a browser may have another name or place: CHROMIUM=/path FIREFOX=/path make test; a snap does not do)"
  "${as_root[@]}" apt-get -qq -o DPkg::Lock::Timeout=300 install -y --no-install-recommends "${missing[@]}" \
    >/dev/null || fail "apt-get could not install: ${missing[*]}; please install that by hand"
fi

browser "${CHROMIUM:-}" "${CHROMIUM_NAMES[@]}" >/dev/null \
  || fail "please install Chromium or Chrome as a package, not as a snap, or name it: CHROMIUM=/path make test"
browser "${FIREFOX:-}" "${FIREFOX_NAMES[@]}" >/dev/null \
  || fail "please install Firefox as a package, not as a snap, or name it: FIREFOX=/path make test"
for tool in node npm; do
  first_of "$tool" >/dev/null || fail "please install Node 18.19 or newer with npm; $tool is not here"
done
first_of pdftotext >/dev/null || fail "please install poppler-utils; pdftotext is not here"
version="$(node --version)" || fail "node does not start; please install Node 18.19 or newer"
IFS=. read -r major minor _ <<<"${version#v}"
[ "$major" -gt 18 ] || { [ "$major" -eq 18 ] && [ "$minor" -ge 19 ]; } \
  || fail "please install Node 18.19 or newer; this is $version"
npm ci --no-audit --no-fund --loglevel=error >/dev/null \
  || fail "npm ci failed (is there a network?): the test packages of package-lock.json could not be had"
