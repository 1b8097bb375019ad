/* The tank: the program drew it once, for paper; here its parts move. One unit is a millimetre, the floor lies at 0, up is negative. */
const SVG = "http://www.w3.org/2000/svg";
const BUBBLES = 60;

function part(name, attributes, parent) {
    const e = document.createElementNS(SVG, name);
    for (const key in attributes) e.setAttribute(key, attributes[key]);
    parent.appendChild(e);
    return e;
}

/* An attribute is written only when it changes. */
function put(e, key, value) {
    const last = e.last || (e.last = {});
    if (last[key] !== value) e.setAttribute(key, last[key] = value);
}
const show = (e, is) => put(e, "visibility", is ? "visible" : "hidden");

function pictureOf(run) {
    const svg = document.querySelector("#sheet svg[data-run='" + run.tank + "']").cloneNode(true), p = {svg, run};
    svg.setAttribute("class", "picture");
    for (const e of svg.querySelectorAll("[data-part]")) p[e.dataset.part] = e;
    p.bubbles.textContent = "";
    p.rings = [];
    for (let i = 0; i < BUBBLES; i++)
        p.rings.push(part("circle", {r: DATA.view.unit * (5 + i * 7 % 9), cx: (30 + i * 0.7548776662 % 1 * (run.width * 1000 - 60)).toFixed(0), visibility: "hidden"}, p.bubbles));
    return p;
}

function body(p, s) {
    const top = Math.min(s.level, p.run.law === null ? 99 : p.run.law), cut = s.level > top + 1e-6;
    const y = Math.max(-top * 1000, DATA.view.top), most = Math.max(-s.high * 1000, DATA.view.top), wide = p.run.width * 1000;
    put(p.body, "y", y.toFixed(1));
    put(p.body, "height", (-y).toFixed(1));
    put(p.past, "y", y.toFixed(1));
    put(p.past, "height", (-y).toFixed(1));
    show(p.past, s.past && s.level <= p.run.depth);
    put(p.possible, "y", most.toFixed(1));
    put(p.possible, "height", Math.max(0, y - most).toFixed(1));
    show(p.edge, cut);
    const tooth = (40 * DATA.view.unit).toFixed(0);
    let d = "M0 " + (y - 2).toFixed(1);
    for (let i = 0; i < 12; i++) d += "l" + (wide / 24).toFixed(1) + " " + tooth + "l" + (wide / 24).toFixed(1) + " -" + tooth;
    if (cut) put(p.edge, "d", d + "z");
    put(p.still, "y1", (-s.still * 1000).toFixed(1));
    put(p.still, "y2", (-s.still * 1000).toFixed(1));
    return y;
}

function bubbles(p, s, y, time) {
    const n = s.boils ? Math.round(Math.min(1, s.void / 0.6) * (thrifty ? BUBBLES / 2 : BUBBLES)) : 0;
    p.rings.forEach((ring, i) => {
        show(ring, i < n);
        if (i < n) put(ring, "cy", (-20 - ((time * 0.55 + i * 0.569840291 + 0.37) % 1) * Math.max(0, -y - 40)).toFixed(0));
    });
}

function layer(p, s, y) {
    const floats = s.afloat >= AFLOAT_KG, thick = Math.max(6 * DATA.view.unit, s.layer * 1000);
    show(p.layer, floats);
    show(p.lens, floats);
    show(p.tenfold, floats && s.layer * 10 < 0.58 * p.run.depth);
    if (!floats) return;
    put(p.layer, "y", y.toFixed(1));
    put(p.layer, "height", thick.toFixed(1));
    put(p.lensed, "height", Math.max(4, s.layer * 10000).toFixed(0));
    p.inches.textContent = length(s.layer, 2);
}

function marks(p, s, time) {
    const run = p.run, load = run.loads.filter(x => time >= x[0] && (x[1] === null || time < x[1]));
    const pours = run.pours.find(x => time >= x[0] && time < x[1]), steps = boxes(run, s);
    show(p.load, load.length > 0);
    if (load.length > 0) {
        const from = load[load.length - 1][2], hot = (s.load - from) / Math.max(1, s.boiling - from);
        [...p.bars.children].forEach((bar, i) => put(bar, "fill", hot > (i + 0.5) / 5 ? "var(--steel)" : "var(--paper)"));
        p.pounds.textContent = load.length > 1 ? load.length + " loads" : load[0][3];
    }
    show(p.pour, !!pours);
    if (pours) p.poured.textContent = pours[2];
    const lies = s.salt + s.crystals, heap = Math.max(6 * DATA.view.unit, run.heap * lies * 1000);
    show(p.salt, lies > 0.5);
    put(p.salt, "height", heap.toFixed(0));
    put(p.salt, "y", (-heap).toFixed(0));
    [...p.ladder.children].forEach((box, i) => put(box, "fill", i < steps ? "var(--ink)" : "var(--paper)"));
    [...p.heat.children].forEach((flame, i) => show(flame, i < Math.round(s.heat / run.full * 6)));
    show(p.spill, s.level > run.depth);
}

function steam(p, s, y, time) {
    const n = boxes(p.run, s), at = Math.max(y, DATA.view.top + 130 * DATA.view.unit) - 20;
    [...p.steam.children].forEach((stroke, i) => {
        show(stroke, i < n);
        if (i >= n) return;
        const x = p.run.width * (500 + (i - (n - 1) / 2) * 85), sway = 30 + Math.sin(time * 1.3 + i) * 10, u = DATA.view.unit;
        put(stroke, "d", "M" + x.toFixed(0) + " " + at.toFixed(0) + "q" + (sway * u).toFixed(0) + " " + (-30 * u).toFixed(0) + " 0 " + (-60 * u).toFixed(0) + "t0 " + (-60 * u).toFixed(0));
    });
}

function tide(p, s) {
    const high = level => "translate(0 " + Math.max(DATA.view.top + 20, -level * 1000).toFixed(0) + ")";
    put(p.highest, "transform", high(Math.min(s.tide, p.run.law === null ? 99 : p.run.law)));
    put(p.utmost, "transform", high(s.most));
}

/* The steam ladder: the first box is steam as usual, each further one doubles it; all, by a division by 0, where nothing is usual. */
const boxes = (run, s) => s.boils && s.steam > 1e-6 ? Math.max(1, Math.min(8, Math.floor(1 + Math.log2(Math.max(1, s.steam / run.calm))))) : 0;

let thrifty = false;
/* What only moves to be seen moving stands where less movement is asked for; what is done is shown all the same. */
function draw(p, s, time, moves) {
    const y = body(p, s), sway = moves ? time : 0;
    bubbles(p, s, y, sway);
    layer(p, s, y);
    marks(p, s, time);
    steam(p, s, y, sway);
    tide(p, s);
}
