"use strict";
/* What the program wrote: differences of whole numbers, in the unit of each column. Between rows lie straight lines. */
const DATA = JSON.parse(document.getElementById("data").textContent);
const AFLOAT_KG = 0.19;
const byId = id => document.getElementById(id);

function unpacked(columns) {
    const out = {};
    for (const key in columns) {
        let sum = 0;
        out[key] = columns[key].map(step => (sum += step) * DATA.units[key]);
    }
    return out;
}

for (const run of DATA.runs) {
    run.rows = unpacked(run.rows);
    run.band = unpacked(run.band);
    run.tideTimes = run.tide.map(x => x[0]);
}

/* The last row not after a time. */
function rowAt(times, time) {
    let low = 0, high = times.length;
    while (high > low + 1) {
        const middle = (low + high) >> 1;
        if (times[middle] <= time) low = middle;
        else high = middle;
    }
    return low;
}

function between(table, time) {
    const i = rowAt(table.t, time), k = Math.min(i + 1, table.t.length - 1), took = table.t[k] - table.t[i];
    const share = took > 0 ? Math.min(1, Math.max(0, (time - table.t[i]) / took)) : 0;
    return key => table[key] ? table[key][i] + share * (table[key][k] - table[key][i]) : 0;
}

function stateAt(run, time) {
    const row = between(run.rows, time), band = between(run.band, time);
    const tide = run.tide[rowAt(run.tideTimes, time)] || [0, 0, 0];
    return {
        boils: run.rows.m[rowAt(run.rows.t, time)] > 0.5,
        temperature: row("T"), boiling: row("b"), steam: row("s"), afloat: row("g"), layer: row("y"), still: row("h"),
        level: row("l"), void: row("v"), load: row("c"), heat: row("q"), salt: row("u"), crystals: row("x"),
        high: band("hi"), left: band("left"), tide: tide[1], most: tide[2],
        past: run.over !== null && time >= run.over
    };
}

const pad = n => String(n).padStart(2, "0");
function clockOf(time) {
    const s = Math.floor(DATA.start + time + 1e-6), day = Math.floor(s / 86400);
    return Math.floor(s / 3600) % 24 + ":" + pad(Math.floor(s / 60) % 60) + ":" + pad(s % 60) + (day > 0 ? "+" + day + "d" : "");
}
const length = (m, places = 1) => DATA.us ? (m / 0.0254).toFixed(places) + " in" : (m * 1000).toFixed(places - 1) + " mm";
const mass = kg => DATA.us ? (kg / 0.45359237).toFixed(1) + " lb" : kg.toFixed(1) + " kg";
const degrees = K => DATA.us ? ((K - 273.15) * 1.8 + 32).toFixed(1) + " °F" : (K - 273.15).toFixed(1) + " °C";
const difference = K => DATA.us ? (K * 1.8).toFixed(1) + " °F" : K.toFixed(1) + " °C";
