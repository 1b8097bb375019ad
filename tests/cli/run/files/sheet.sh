# A run sheet is no output, and lies beside its scenario or below it, unless it is asked for from elsewhere.
mkdir shop shop/sheets
printf 'time,act\n0:10,water 1 gal over 4 min\n' | tee outside.csv shop/beside.csv >shop/sheets/below.csv
ln -s ../outside.csv shop/leads_out.csv
try() { # the file that `schedule` names, options...
    sheet=$1
    shift
    sed -e '/^\[schedule\]/,$d' -e "1i\\
schedule = $sheet" calm.bath >shop/a.bath
    echo "$sheet $*"
    boilback check shop/a.bath "$@" 2>&1 | sed -n '1,3p'
}
try beside.csv
try sheets/below.csv
try "$PWD/shop/beside.csv" | sed "s,$PWD,HERE,"
try ../outside.csv
try leads_out.csv
try /etc/passwd
try none.csv
try ../outside.csv --sheet-anywhere
try beside.csv --csv shop/sheets/../beside.csv
cat shop/beside.csv
