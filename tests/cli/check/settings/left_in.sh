# A load that nothing lifts is worth a second look; one that is lifted, by its name or with everything, is not.
sed '/^every.*lift/d; s/, for [0-9]* min//' night.bath | sed '/lift pipes/d' >left.bath
sed 's/lift pipes/lift/' night.bath >all.bath
printf '0:50 load 10 lb, plate 1/4 in\n' >>left.bath
for bath in left night all; do
    boilback check $bath.bath | sed -n "1p; /^ Remark/,/^$/p"
done
boilback check left.bath --json | grep -A3 '"remarks"'
# Where salts fall out of the bath as it is charged: the same as of the solution itself; a bath colder than that is told so.
boilback check calm.bath | grep 'salts fall out'
boilback solution --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2' --boiling-point '285 degF' --altitude '900 ft' | grep 'crystallises'
sed 's/^temperature = 200 degF/temperature = 100 degF/' night.bath >cold.bath
boilback check cold.bath | grep -A1 'salts fall out'
boilback check water.bath | grep -c 'salts fall out' || true
