#!/bin/sh
# Lets a program write on a disk, and takes what that disk holds at a moment, as if the power had gone then.
#
#   unshare --mount --pid --fork --kill-child sh cut-power.sh FOLDER kept|lost OPTIONS "PAUSE_S ..." PROGRAM [PARAMETER ...]
#
# The disk is a file system in a file (`image`), which lies on another one, the cabinet. As the power goes, the cabinet is
# frozen: from then on nothing that the file system of the disk sends down reaches the image, and what the program wrote and
# the kernel had not yet sent is not in it. The image is copied as it stands, the cabinet thawed, and the program goes on; it is
# never told anything that a machine without power could not have told it.
#
# `kept`: the drive keeps all that it was sent. `lost`: a drive lies between, a file system whose cache of pages is the cache
# of the drive; what was sent and not flushed is lost as well.
# OPTIONS are those of the mount, PAUSE_S how long the program writes on before each cut. It runs with FOLDER as its own, where
# the disk is `disk`. Of cut N remain:
#   answered.N  what the program had printed before the power went
#   late.N      the same, with what it printed until it was gone
#   kept.N      what the disk holds afterwards; unread.N has what could not be read
#
# In namespaces of their own, mounts and programs are gone with this script, however it ends.
set -eu
folder=$1 cache=$2 options=$3 pauses=$4
shift 4
cd "$folder"
mkdir cabinet drive disk again

a_disk() {
  dd if=/dev/zero of="$1" bs=1M count="$2" status=none
  mkfs.ext4 -q "$1"
}

truncate -s 192M cabinet.image
mkfs.ext4 -q cabinet.image
mount -o loop cabinet.image cabinet
a_disk cabinet/image 112
if [ "$cache" = lost ]; then
  mount -o loop cabinet/image drive
  a_disk drive/image 80
  sync -f drive/image
  mount -o "loop,$options" drive/image disk
else
  mount -o "loop,$options" cabinet/image disk
fi

answers() { grep -c '^ack ' answers || true; }

# Ten answers more than at the last cut: some seconds on a slow disk, and no more than a minute.
wait_for_answers() {
  tries=0
  while [ "$(answers)" -lt $(($1 + 10)) ]; do
    tries=$((tries + 1))
    if [ $tries -gt 1200 ]; then
      echo "no more answers: $(tail -n 1 answers)" >&2
      exit 1
    fi
    sleep 0.05
  done
}

cut_power() {
  cp answers "answered.$1"
  fsfreeze -f cabinet
  cp answers "late.$1" && cp cabinet/image as-it-stood || failed=yes
  fsfreeze -u cabinet
  [ -z "${failed-}" ]
}

read_again() {
  mount -o loop as-it-stood again
  image=again
  if [ "$cache" = lost ]; then
    mkdir "inside.$1"
    mount -o loop again/image "inside.$1"
    image=inside.$1
  fi
  cp -a "$image" "kept.$1" 2> "unread.$1" || true
  [ "$image" = again ] || umount "$image"
  umount again
}

"$@" > answers &
cut=0
for pause in $pauses; do
  [ $cut -eq 0 ] || wait_for_answers "$(grep -c '^ack ' "answered.$cut" || true)"
  cut=$((cut + 1))
  sleep "$pause"
  cut_power $cut
  read_again $cut
done
