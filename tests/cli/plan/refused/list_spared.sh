# The list of jobs is written over by nothing, nor is one file written twice; and a part of the list only is said how in the list.
cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.bath .
cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.csv .
boilback plan five-jobs.bath --csv five-jobs.csv
boilback plan five-jobs.bath --write five-jobs.csv
boilback run five-jobs.bath --csv five-jobs.csv
cmp five-jobs.csv "$BOILBACK_DATA"/scenarios/plan/five-jobs.csv && echo the list is as it was
boilback plan five-jobs.bath --write same --csv same
boilback plan five-jobs.bath --write - --json
test -e same || echo nothing was written
boilback practise five-jobs.bath --script /dev/null --save five-jobs.csv
cat >five-jobs.csv <<'END'
name,mass [lb],shape,size [in],pieces,minutes [min]
gears,300,plate,1/2,20,30
END
boilback plan five-jobs.bath
cat >five-jobs.csv <<'END'
part,qty,weight [lb],shape,thickness [in],time [min]
END
boilback plan five-jobs.bath
