#!/usr/bin/env bash
# Gets what the tests drive and pip cannot give: Node with its packages, both browsers, and a PDF reader.
# Fails with one plain sentence when something cannot be had; nothing is skipped.
set -euo pipefail
cd "$(dirname "$0")/.."

fail() {
  echo "set-up: $*" >&2
  exit 1
}

missing=()
command -v node >/dev/null || missing+=(nodejs)
command -v npm >/dev/null || missing+=(npm)
command -v chromium >/dev/null || missing+=(chromium)
command -v firefox-esr >/dev/null || missing+=(firefox-esr)
command -v pdftoppm >/dev/null || missing+=(poppler-utils)

if [ "${#missing[@]}" -gt 0 ]; then
  command -v apt-get >/dev/null || fail "please install: ${missing[*]} (this script installs only through apt-get)"
  as_root=()
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || fail "please install as root: ${missing[*]}"
    as_root=(sudo)
  fi
  echo "set-up: installing ${missing[*]}"
  "${as_root[@]}" apt-get -qq update || fail "apt-get update failed"
  DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get -qq install -y --no-install-recommends "${missing[@]}" \
    >/dev/null || fail "could not install: ${missing[*]}"
fi

node -e 'const [major, minor] = process.versions.node.split(".").map(Number); process.exit(major > 18 || (major === 18 && minor >= 19) ? 0 : 1)' \
  || fail "Node 18.19 or newer is needed; this is $(node --version)"
npm ci --no-audit --no-fund --silent || fail "npm ci failed: the test packages of package-lock.json could not be had"
