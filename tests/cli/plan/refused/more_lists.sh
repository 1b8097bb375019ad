# A cell that is wrong is said, and those behind it as well.
cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.bath .
list() { cat >five-jobs.csv && boilback plan five-jobs.bath; }
list <<'END'
name,mass,shape,size,wall,pieces,material,minutes [min],at most,earliest [clock],due [clock],priority,basket,split,share,temperature,packed
a,60 lb,bar,3/4 in,,120,steel,20,40,6:00,,normal,15,no,no,90 degF,
b,60,tube,3/4 in,1/8,120,steel,20 min,40 min,6:00,,normal,15 lb,no,no,90,2
c,60 lb,bar,3/4 in,,many,steel,x,40 h,25:00,never,normal,15 lb,no,perhaps,90 degF,2 in
d,60 lb,bar,3/4 in,,120,steel,20,40 min,6:00,,normal,15 lb,no,no,warm,2 in
e,"60 lb"x,bar,3/4 in,,120,steel,20,40 min,6:00,,normal,15 lb,no,no,90 degF,2 in
f,60 lb,bar,3/4 in,,120,steel,0,400 h,6:00,,normal,15 lb,no,no,90 degF,2 in
END
printf 'name\tmass\tshape\n' | list
list <<'END'
name [lb],mass [lb,shape,"size [in]"x,minutes [min]
END
list <<'END'
qty,mass [a unit that is far longer than any that there is],shape,size [in],minutes [h],earliest
END
