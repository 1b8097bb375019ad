#!/bin/sh
# dist.sh BUILD VERSION DATE -- BUILD/boilback-VERSION.tar.gz, the same bytes from the same sources whenever and
# wherever it is made (GNU tar). In a checkout it holds the last commit; elsewhere what the list FILES of an earlier
# tarball names; where git cannot be asked and there is no list, all files but those that were built. SOURCE_DATE_EPOCH, if set, is the time of every file instead of DATE.
set -eu
build=$1 version=$2
when="$3 00:00:00 UTC"
if [ -n "${SOURCE_DATE_EPOCH:-}" ]; then when=@$SOURCE_DATE_EPOCH; fi
name=boilback-$version
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/$name"

# git may be missing, or refuse a checkout of another owner.
if [ -e .git ] && git rev-parse --verify -q HEAD >/dev/null 2>&1; then
    if [ -n "$(git status --porcelain)" ]; then echo "dist: what is not committed stays out" >&2; fi
    git archive HEAD >"$work/tar"
elif [ -e FILES ]; then
    tar -cf "$work/tar" -T FILES
else
    echo "dist: no list of sources, so every file that is here goes in" >&2
    tar -cf "$work/tar" --exclude=./build --exclude=./.git .
fi
tar -xf "$work/tar" -C "$work/$name"
(cd "$work/$name" && : >FILES && find . -type f | LC_ALL=C sort >"$work/list" && mv "$work/list" FILES)

mkdir -p "$build"
(cd "$work" && tar --format=ustar --sort=name --mtime="$when" --owner=0 --group=0 --numeric-owner \
    --mode=u=rwX,go=rX -cf - "$name") | gzip -n -9 >"$build/$name.tar.gz"
echo "$build/$name.tar.gz"
