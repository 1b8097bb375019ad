cp "$BOILBACK_DATA"/scenarios/plan/five-jobs.bath .
list() { cat >five-jobs.csv && boilback plan five-jobs.bath; }
sed -i '/^water /a end = 7:55' five-jobs.bath
list <<'END'
name,mass [lb],shape,size [in],pieces,material,minutes [min],at most [min],earliest [clock],due [clock],priority,basket [lb],split,share
washers,35,plate,1/8,400,brass,12,16,6:00,,normal,5,no,yes
spindles,40 kg,bar,1 1/2,16,steel,25,40,6:00,,normal,10,no,no
hooks,,bar,3/8,160,steel,15,25,6:30,7:40,must,8,no,yes
levers,50,plate,1/4,60,steel,95,,6:25,,normal,8,no,yes
plates,100,plate,3/8,20,steel,12,25,7:00,7:10,must,12,yes,no
clips,30,plate,1/16,1,steel,12,15,6:50,,must,5,yes,yes
studs,30,plate,1/16,1,steel,12,15,6:50,,,5,yes,yes
hinges,30,lump,1/16,1,steel,12,15,6:50,,,5,no,yes
pins,25,bar,1/2,200,steel,15,25,6:00,7:00,urgent,5,maybe,yes
pins,25,bar,1/2,200,steel,15,25,6:00,7:00,must,5,no,yes
Pins,25,bar,1/2,200,steel,15,10,6:00,7:00,must,5,no,yes
rods,25,bar,1/2,200,steel,15,25,6:00,7:00,must,5,no,yes,9
END
list <<'END'
name;mass;shape
END
list <<'END'
name,weight [lb],mass,shape,size [lb],minutes [min],due [min],name
END
list <<'END'
name,mass,shape,size [in],minutes
x,25,plate,1/4,10
y,25 lb,plate,1/4,10 min
END
printf '# nothing\n' | list
