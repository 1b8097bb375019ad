/* Level over time: of all, and of the moments where it moves fast. */
function heightOf(runs) {
    const depth = Math.max(...runs.map(r => r.depth)), low = Math.min(...runs.map(r => Math.min(...r.rows.h))) - 0.05 * depth;
    const high = 1.4 * depth;
    return m => (97 - (Math.min(m, high) - low) / (high - low) * 94).toFixed(2);
}

function line(times, values, x, y) {
    return times.map((t, i) => (i ? "L" : "M") + x(t) + " " + y(values[i])).join("");
}

/* Rows of a table from one time to another, the ends put in between. */
function cutOut(table, keys, from, to) {
    const out = {t: []};
    for (const key of keys) out[key] = [];
    const add = t => {
        const value = between(table, t);
        out.t.push(t);
        for (const key of keys) out[key].push(value(key));
    };
    add(from);
    for (const t of table.t) if (t > from && t < to) add(t);
    add(to);
    return out;
}

/* The run's own times of a stretch of the clock. */
const within = (run, from, to) => [Math.max(0, from + lagOf(run)), Math.min(run.end, to + lagOf(run))];

function stripOf(svg, runs, from, to) {
    const wide = svg.clientWidth || 1000, x = t => ((t - from) / (to - from) * wide).toFixed(1), y = heightOf(runs), plain = {"vector-effect": "non-scaling-stroke", fill: "none", stroke: "var(--ink)"};
    svg.textContent = "";
    svg.setAttribute("viewBox", "0 0 " + wide + " 100");
    for (const span of spans)
        if (span[1] > from && span[0] < Math.min(to, horizon) && svg.id === "whole")
            part("rect", {x: x(span[0]), width: Math.max(6, x(span[1]) - x(span[0])), y: 1, height: 98, fill: "none", stroke: "var(--line)", "stroke-dasharray": "2 2", "vector-effect": "non-scaling-stroke"}, svg);
    for (const run of runs) {
        const band = cutOut(run.band, ["lo", "hi"], ...within(run, from, Math.min(to, horizon))), own = t => x(t - lagOf(run));
        const up = line(band.t, band.hi, own, y), down = line(band.t.slice().reverse(), band.lo.slice().reverse(), own, y).replace("M", "L");
        part("path", {d: up + down + "z", fill: "url(#band)"}, svg);
        part("path", {...plain, d: "M0 " + y(run.depth) + "H" + wide, "stroke-width": 1.5}, svg);
    }
    runs.forEach((run, i) => {
        const rows = cutOut(run.rows, ["l"], ...within(run, from, Math.min(to, horizon))), own = t => x(t - lagOf(run));
        part("path", {...plain, d: line(rows.t, rows.l, own, y), "stroke-width": i ? 2 : 3.5, "stroke-dasharray": i ? "7 4" : "none"}, svg);
    });
    const cursor = part("line", {...plain, y1: 0, y2: 100, stroke: "var(--water)", "stroke-width": 3}, svg);
    return time => {
        show(cursor, time >= from && time <= to);
        put(cursor, "x1", x(time));
        put(cursor, "x2", x(time));
    };
}
