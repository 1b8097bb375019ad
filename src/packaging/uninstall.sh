#!/bin/sh
# uninstall.sh ROOT -- remove the files that install.sh noted, and the folders it made, if nothing else is in them.
set -eu
root=$1
note=$root/share/boilback/installed
if [ ! -f "$note" ]; then
    echo "no installation of boilback is noted in $root" >&2
    exit 0
fi
left=$(mktemp)
trap 'rm -f "$left"' EXIT
cp "$note" "$left"
sed -n 's/^file //p' "$left" | while IFS= read -r file; do rm -f "$root/$file"; done
rm -f "$note"
sed -n 's/^folder //p' "$left" | sort -r | while IFS= read -r folder; do
    case $folder in
    .) rmdir "$root" 2>/dev/null || : ;;
    *) rmdir "$root/$folder" 2>/dev/null || : ;;
    esac
done
