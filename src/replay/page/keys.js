/* Keys count only while focus lies in the replay; single letters can be switched off [WCAG 2.2, 2.1.4]. */
function faster(by) {
    const s = byId("speed");
    s.selectedIndex = Math.max(0, Math.min(s.options.length - 1, s.selectedIndex + by));
    speed = Number(s.value);
}

function less(is) {
    still = is;
    byId("still").checked = is;
    paint();
}

const moves = {
    ArrowLeft: e => e.shiftKey ? nearEvent(false) : jump(time - 5),
    ArrowRight: e => e.shiftKey ? nearEvent(true) : jump(time + 5),
    Home: () => jump(0), End: () => jump(DATA.end)
};
const signs = {
    ",": () => jump(time - 0.1), ".": () => jump(time + 0.1), "<": () => faster(-1), ">": () => faster(1),
    "?": () => byId("help").click(), m: () => less(!still), s: () => { spokeAt = -1e9; say(howItStands()); }
};

function pressed(e) {
    const tag = e.target.tagName, slides = tag === "INPUT" && e.target.type === "range";
    if (e.ctrlKey || e.altKey || e.metaKey || tag === "SELECT") return;
    if (e.key === "Escape" && asking) leave();
    else if (asking && e.key >= "1" && e.key <= String(asking.choices.length)) answer(Number(e.key) - 1);
    else if (e.key === " " && tag !== "BUTTON" && !(tag === "INPUT" && !slides)) play(!playing);
    else if (moves[e.key] && !slides) moves[e.key](e);
    else if (signs[e.key.toLowerCase()] && byId("letters").checked) signs[e.key.toLowerCase()](e);
    else return;
    e.preventDefault();
}
