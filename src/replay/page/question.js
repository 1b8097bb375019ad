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
    stop.chosen = choice.text;
    horizon = DATA.end;
    begin();
    go(stop.at + 0.1);
    play(true);
    spokeAt = performance.now();
    write(byId("said"), "You chose: " + choice.text);
}

/* Once all is over: what came of each, and the sentence to take home. */
function tellOutcome() {
    const over = time >= DATA.end, told = shown.map(run => (shown.length > 1 ? run.name + ": " : "") + (run.outcome || run.verdict));
    const chosen = DATA.stops.filter(stop => stop.chosen).map(stop => "You chose: " + stop.chosen + ".");
    const failed = DATA.stops.some(stop => stop.chosen) && /^Not/.test(shown[0].outcome);
    byId("outcome").hidden = !over || DATA.stops.length === 0;
    write(byId("outcome"), [...chosen, ...told, failed ? DATA.hint : "", DATA.debrief, DATA.care].filter(Boolean).join(" "));
    byId("again").hidden = byId("outcome").hidden;
}

function askAgain() {
    const stop = DATA.stops[0];
    jump(stop.at);
    ask(stop);
}
