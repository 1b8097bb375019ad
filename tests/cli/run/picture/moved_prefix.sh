# What was installed may be moved: scripts are found beside the program.
command -v gnuplot >/dev/null || exit 77
mkdir -p prefix/bin prefix/share/boilback
cp "$(command -v boilback)" prefix/bin
cp -R "$BOILBACK_DATA/plots" prefix/share/boilback
mv prefix moved
unset BOILBACK_DATA
moved/bin/boilback run calm.bath --plot out.svg >/dev/null && [ -s out.svg ] || echo "not found"
exit 0
