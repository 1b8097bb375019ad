/* A stop that asks. Each answer was run beforehand; A becomes that run. */
let asking = null;
function ask(stop) {
    asking = stop;
    byId("asked").textContent = clockOf(stop.at) + "  " + stop.text;
    byId("answers").textContent = "";
    stop.choices.forEach((choice, i) => {
        const item = document.createElement("li"), button = document.createElement("button");
        button.type = "button";
        button.textContent = i + 1 + "  " + choice.text;
        button.onclick = () => answer(i);
        item.append(button);
        byId("answers").append(item);
    });
    byId("question").hidden = false;
    document.body.classList.add("asking");
    byId("question").focus();
}

function leave() {
    asking = null;
    byId("question").hidden = true;
    document.body.classList.remove("asking");
    byId("play").focus();
}

function answer(i) {
    const stop = asking, choice = stop.choices[i];
    leave();
    shown[0] = DATA.runs[choice.run];
    begin();
    go(stop.at + 0.1);
    byId("outcome").hidden = false;
    byId("outcome").textContent = "You chose: " + choice.text + ". What comes of it: " + shown[0].verdict;
    play(true);
    spokeAt = performance.now();
    write(byId("said"), "You chose: " + choice.text);
}
