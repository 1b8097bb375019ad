# Scripts and the like, in a scenario that is no lesson; a lesson without its scripts, or with a question that has one answer.
{
    cat calm.bath
    printf "[%s]\n" careful reckless idle choices "must name"
} >scripts.bath
boilback check scripts.bath
{
    cat calm.bath
    printf "%s\n" "[lesson]" "goal = To see" "question = What now?" "pass = boils" "[choices]" "at 0:05 ask What now?" "choice One =" "at 0:10 ask And now?"
} >half.bath
boilback check half.bath
{
    cat half.bath
    printf "[%s]\n" careful reckless
} >answers.bath
boilback check answers.bath
echo "goal = Outside of it" >outside.bath
cat calm.bath >>outside.bath
boilback check outside.bath
