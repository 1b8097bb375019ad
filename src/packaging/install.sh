#!/bin/sh
# install.sh STAGE ROOT -- copy the tree STAGE to below ROOT. ROOT/share/boilback/installed notes every file that was
# put there and every folder that was made for them, for uninstall.sh. What an earlier installation put there and this
# one lacks goes.
set -eu
stage=$1 root=$2
note=share/boilback/installed
new=$(mktemp)
trap 'rm -f "$new"' EXIT

noted() { # file or folder: what an earlier installation noted
    if [ -f "$root/$note" ]; then sed -n "s/^$1 //p" "$root/$note"; fi
}

folders_made() {
    noted folder
    (cd "$stage" && find . -type d | sort) | while IFS= read -r folder; do
        if [ ! -d "$root/$folder" ]; then
            mkdir -p "$root/$folder"
            echo "$folder"
        fi
    done
}

files() {
    (cd "$stage" && find . -type f -o -type l | sort)
}

copy() {
    files | while IFS= read -r file; do
        mode=644
        if [ -x "$stage/$file" ]; then mode=755; fi
        rm -f "$root/$file"
        if [ -L "$stage/$file" ]; then
            ln -s "$(readlink "$stage/$file")" "$root/$file"
        else
            install -m "$mode" "$stage/$file" "$root/$file"
        fi
    done
}

remove_stale() {
    noted file | while IFS= read -r file; do
        if [ ! -e "$stage/$file" ]; then rm -f "$root/$file"; fi
    done
}

folders_made | sort -u | sed 's/^/folder /' >"$new"
files | sed 's/^/file /' >>"$new"
remove_stale
copy
install -m 644 "$new" "$root/$note"
echo "boilback is in $root"
