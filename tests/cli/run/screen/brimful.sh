# A surface that stays near the rim: what is drawn reaches 5 cm below it all the same.
{ echo 'duration = 10 min'; cat brimful.bath; } | boilback run - --units si
