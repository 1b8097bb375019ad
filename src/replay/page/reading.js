/* The panel over each tank. Its height never changes: what is below must not move as it boils over. */
function roomOf(run, s) {
    const room = run.depth - s.level;
    if (room >= 0) return [length(room), "to the rim"];
    if (run.law !== null && s.level > run.law)
        return ["> " + (DATA.us ? Math.floor((run.law - run.depth) / 0.0254) + " in" : Math.floor((run.law - run.depth) * 1000) + " mm"), "OVER, or more"];
    return [length(-room), "OVER the rim"];
}

/* After it came over nothing more is foretold. */
function risk(run, s) {
    if (s.past || (s.boils && s.afloat < AFLOAT_KG)) return "";
    if (s.left < 0) return "If it lets go now: OVER THE RIM";
    return s.left < run.limit ? "If it lets go now: " + length(s.left) + " left" : "";
}

function sign(run, s) {
    if (s.level > run.depth) return "OVER THE RIM (" + run.sure + ")";
    if (s.past) return "Was over the rim: no prediction";
    return s.high > run.depth ? "△ Possible: over the rim" : "";
}

function steamOf(run, s) {
    if (!s.boils) return difference(Math.max(0, s.boiling - s.temperature)) + " below boiling";
    if (!(run.calm > 0)) return "steam: nothing to compare";
    const times = s.steam / run.calm;
    if (times < 1.5) return "steam as usual";
    return "steam " + (times >= 10 ? "> " + Math.floor(times) : times.toFixed(1)) + " x usual";
}

function inIt(s) {
    if (s.afloat >= AFLOAT_KG) return mass(s.afloat) + " of water float";
    if (s.salt > 0.5) return mass(s.salt) + " of salt on the floor";
    return s.crystals > 0.5 ? mass(s.crystals) + " of crystals" : "";
}

function sentence(run, s) {
    let text = run.name + ": " + (s.boils ? "boils" : "quiet, " + difference(Math.max(0, s.boiling - s.temperature)) + " below boiling");
    text += s.level > run.depth ? "; over the rim" : "; " + length(run.depth - s.level) + " to the rim";
    if (s.afloat >= AFLOAT_KG) text += "; " + mass(s.afloat) + " of water float";
    const next = risk(run, s);
    return next ? text + "; " + next.toLowerCase() : text;
}

function panelOf(run) {
    const figure = document.createElement("figure"), title = document.createElement("h2"), reading = document.createElement("div");
    title.id = "title-" + run.name;
    title.textContent = run.name + "  " + (horizon < DATA.end && run === shown[0] ? "Yours to decide" : run.title);
    const clock = document.createElement("span");
    title.append(clock);
    figure.setAttribute("aria-labelledby", title.id);
    reading.className = "reading";
    reading.innerHTML = '<p class="room"><b></b><span></span></p><p class="now"><b></b><span></span><span></span></p><p class="sign"></p><p class="sign"></p>';
    const p = pictureOf(run), room = reading.children[0], now = reading.children[1];
    figure.append(title, reading, p.svg);
    byId("tanks").append(figure);
    return {run, figure, clock, picture: p, room, number: room.children[0], what: room.children[1], boil: now.children[0],
        steam: now.children[1], floats: now.children[2], risk: reading.children[2], sign: reading.children[3], gauge: gaugeOf(now)};
}

/* Degrees below boiling, 0 to 10 degF or 5 degC. The word beside it is the truth: at 0.0 below it can be quiet. */
function gaugeOf(after) {
    const svg = document.createElementNS(SVG, "svg");
    svg.setAttribute("viewBox", "0 0 300 22");
    svg.setAttribute("class", "gauge");
    svg.setAttribute("aria-hidden", "true");
    part("path", {d: "M4 18H250M4 12V18M53 14V18M102 14V18M151 14V18M200 14V18M250 6V18", fill: "none", stroke: "var(--ink)", "stroke-width": 2}, svg);
    part("text", {x: 256, y: 17}, svg).textContent = "boils";
    after.prepend(svg);
    return part("path", {fill: "var(--ink)"}, svg);
}

function write(e, text) {
    if (e.textContent !== text) e.textContent = text;
}

function warn(e, text) {
    write(e, text);
    e.classList.toggle("on", text !== "");
}

function read(panel, s) {
    const run = panel.run, [number, what] = roomOf(run, s), below = Math.max(0, s.boiling - s.temperature);
    write(panel.number, number);
    write(panel.what, what);
    panel.room.classList.toggle("over", s.level > run.depth);
    write(panel.boil, (s.boils ? "● BOILS  " : "○ QUIET  ") + degrees(s.temperature));
    write(panel.steam, steamOf(run, s));
    write(panel.floats, inIt(s));
    warn(panel.risk, risk(run, s));
    warn(panel.sign, sign(run, s));
    put(panel.gauge, "d", "M" + (250 - Math.min(1, below / (DATA.us ? 10 / 1.8 : 5)) * 246).toFixed(1) + " 17l-7 -15h14z");
}
