#!/bin/sh
# Installs what sparse_reference.py compares with, from Debian's packages.
set -e
apt-get update -q
apt-get install -y -q --no-install-recommends python3-scipy libcholmod3 libopenblas0-serial
