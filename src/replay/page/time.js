/* The clock of the replay: one for both tanks, and the slower of the two rules. */
let time = 0, playing = false, speed = 0, still = matchMedia("(prefers-reduced-motion: reduce)").matches;
let shown = DATA.shown.map(i => DATA.runs[i]), panels = [], spans = [], events = [], cursors = [], passed = -1, lastFrame = 0, holds = 0, lateFrames = 0;
const costs = [];

/* B may be laid on A's boil: shown as much later, or earlier, as its boil comes back. Both clocks stand over their tanks then. */
let laid = false;
const lagOf = run => laid && run === shown[1] ? shown[0].later : 0;
const ownTime = run => Math.max(0, Math.min(time + lagOf(run), run.end));
const tookWords = s => (s >= 60 ? Math.floor(s / 60) + " min " : "") + Math.floor(s % 60) + " s";
const lagWords = s => tookWords(Math.abs(s)) + (s > 0 ? " later" : " earlier");

/* Until a question is answered, or passed by hand, nothing beyond it is shown anywhere. */
let horizon = DATA.stops.length > 0 ? DATA.stops[0].at : DATA.end;

const spanAt = t => spans.find(x => t >= x[0] && t < x[1]);

function paint() {
    for (const panel of panels) {
        const s = stateAt(panel.run, ownTime(panel.run)), lag = lagOf(panel.run);
        write(panel.clock, laid ? "  " + clockOf(ownTime(panel.run)) + (lag ? ", " + lagWords(lag) : "") : "");
        draw(panel.picture, s, ownTime(panel.run), !still);
        read(panel, s);
    }
    write(byId("clock"), clockOf(time));
    byId("slowed").classList.toggle("on", !!spanAt(time));
    byId("scrub").value = Math.round(time * 10);
    for (const cursor of cursors) cursor(time);
    tellOutcome();
    markEvent();
}

/* After a moment was chosen by hand: what is seen is named anew. */
function rename() {
    for (const panel of panels) panel.picture.svg.setAttribute("aria-label", sentence(panel.run, stateAt(panel.run, ownTime(panel.run))));
    byId("scrub").setAttribute("aria-valuetext", clockOf(time) + ", " + panels.map(p => {
        const s = stateAt(p.run, ownTime(p.run));
        return p.run.name + (s.level > p.run.depth ? " over the rim" : s.boils ? " boils" : " quiet");
    }).join(", "));
}

function go(to) {
    time = Math.max(0, Math.min(DATA.end, to));
    if (time > horizon) {
        horizon = DATA.end;
        begin();
    }
    paint();
}

function howItStands() {
    return clockOf(time) + ". " + panels.map(p => sentence(p.run, stateAt(p.run, ownTime(p.run)))).join(". ");
}

function play(on) {
    if (on && time >= DATA.end) go(0);
    playing = on;
    write(byId("play"), on ? "Pause" : "Play");
    rename();
    if (on) {
        lastFrame = performance.now();
        holds = 0;
        requestAnimationFrame(still ? stepByEvent : stepByTime);
    } else say(howItStands());
}

/* Where the hand moves the clock it stands. */
function jump(to) {
    if (playing) play(false);
    go(to);
    rename();
}

/* The stop that lies between two moments, not asked before. */
const stopBetween = (from, to) => DATA.stops.find(stop => !stop.asked && from < stop.at && to >= stop.at);

function stopAt(stop) {
    stop.asked = true;
    go(stop.at);
    play(false);
    ask(stop);
}

function stepByTime(now) {
    if (!playing) return;
    if (still) return requestAnimationFrame(stepByEvent);
    const began = performance.now(), took = Math.min(0.25, (now - lastFrame) / 1000), span = spanAt(time);
    lateFrames = now - lastFrame > 33 ? lateFrames + 1 : 0;
    if (lateFrames > 3) thrifty = true;
    lastFrame = now;
    let next = time + took * (span ? Math.min(speed, span[2]) : speed);
    const entered = spans.find(x => time < x[0] && next > x[0]);
    if (entered) next = entered[0];
    const stop = stopBetween(time, next);
    if (stop) return stopAt(stop);
    go(next);
    costs.push(performance.now() - began);
    if (time >= DATA.end) play(false);
    else requestAnimationFrame(stepByTime);
}

/* Less movement: each event stands four seconds. */
function stepByEvent(now) {
    if (!playing) return;
    if (!still) return requestAnimationFrame(stepByTime);
    if (now >= holds) {
        const next = events.find(e => e.time > time + 0.05), to = next ? next.time + 0.06 : DATA.end, stop = stopBetween(time, to);
        if (stop) return stopAt(stop);
        go(to);
        rename();
        holds = now + 4000;
        if (time >= DATA.end) return play(false);
    }
    requestAnimationFrame(stepByEvent);
}
