/* The list of events, and what is spoken of it: one message in three seconds, alerts first, the rest dropped. */
let spokeAt = -1e9;
function say(text, grave) {
    const now = performance.now();
    if (!grave && playing && now - spokeAt < 3000) return;
    spokeAt = now;
    write(byId(grave ? "alarm" : "said"), text);
}

/* What befalls both at the same second is said once. */
function collect() {
    const list = [];
    for (const run of shown)
        for (const [at, text, grave] of run.events) {
            const time = at - lagOf(run), same = list.find(e => e.text === text && Math.floor(e.time) === Math.floor(time));
            if (same) same.names.push(run.name);
            else list.push({time, text, grave: !!grave, names: [run.name], own: lagOf(run) ? at : null});
        }
    for (const stop of DATA.stops) list.push({time: stop.at, text: "The question: " + stop.text, names: [], stop});
    return list.filter(e => e.time >= 0 && e.time <= horizon).sort((a, b) => a.time - b.time);
}

const spoken = e => (e.names.length && shown.length > 1 ? e.names.join(" and ") + (e.own ? " (" + clockOf(e.own) + ")" : "") + ": " : "") + e.text;

function listEvents() {
    byId("events").textContent = "";
    events = collect();
    for (const e of events) {
        const item = document.createElement("li"), button = document.createElement("button");
        button.type = "button";
        button.textContent = clockOf(e.time) + "  " + spoken(e);
        button.onclick = () => {
            jump(e.time + (e.stop ? 0 : 0.06));
            if (e.stop) ask(e.stop);
        };
        item.append(button);
        byId("events").append(item);
    }
    passed = -1;
}

/* Of what is grave that of the last second alone: what was before is overtaken. */
function sayOf(fresh) {
    const grave = fresh.filter(e => e.grave), last = grave.length ? grave[grave.length - 1] : fresh[fresh.length - 1];
    const told = grave.length ? grave.filter(e => clockOf(e.time) === clockOf(last.time)) : [last];
    say(clockOf(last.time) + " " + told.map(spoken).join(" "), grave.length > 0);
}

function markEvent() {
    let now = -1;
    while (now + 1 < events.length && events[now + 1].time <= time) now++;
    if (now === passed) return;
    const items = byId("events").children, fresh = events.slice(passed + 1, now + 1);
    if (items[passed]) items[passed].removeAttribute("aria-current");
    if (items[now]) items[now].setAttribute("aria-current", "step");
    if (now > passed) sayOf(fresh);
    passed = now;
}

function nearEvent(forward) {
    const e = forward ? events.find(x => x.time > time + 0.05) : events.filter(x => x.time < time - 0.2).pop();
    jump(e ? e.time + 0.06 : forward ? DATA.end : 0);
    say(e ? clockOf(e.time) + " " + spoken(e) : howItStands());
}
