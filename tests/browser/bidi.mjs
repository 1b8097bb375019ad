// bidi.mjs -- a browser of another engine, spoken to by the open protocol over a socket [W3C WebDriver BiDi]; no library. It says
// what browser.mjs says, but `call`: what only the debugging pipe tells.
import { spawn } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { inflateSync } from "node:zlib";

const profile = fs.mkdtempSync(path.join(os.tmpdir(), "boilback-browser-"));
const flags = ["--headless", "--no-remote", "--profile", profile, "--remote-debugging-port", "0", "about:blank"];
const child = spawn(process.env.BROWSER_PROGRAM, flags, { stdio: ["ignore", "ignore", "pipe"], env: { ...process.env, HOME: profile } });
const waiting = new Map();
let count = 0, told = "";

export const call = null;
export const troubles = []; // exceptions, and requests for anything but the page itself
export const sleep = ms => new Promise(done => setTimeout(done, ms));

function heard(message) {
    if (waiting.has(message.id)) {
        waiting.get(message.id)(message);
        waiting.delete(message.id);
    } else if (message.method === "network.beforeRequestSent" && !/^(file|about|data):/.test(message.params.request.url))
        troubles.push("request: " + message.params.request.url);
    else if (message.method === "log.entryAdded" && message.params.level === "error")
        troubles.push("error: " + message.params.text);
}

const address = await new Promise(done => child.stderr.on("data", bytes => {
    told += bytes;
    const found = told.match(/listening on (ws:\S+)/);
    if (found) done(found[1]);
}));
const socket = new WebSocket(address + "/session");
await new Promise(done => socket.addEventListener("open", done));
socket.addEventListener("message", e => heard(JSON.parse(e.data)));

async function send(method, params) {
    const answer = await new Promise(done => {
        waiting.set(++count, done);
        socket.send(JSON.stringify({ id: count, method, params }));
    });
    if (answer.type === "error") throw new Error(method + ": " + answer.message);
    return answer.result;
}

await send("session.new", { capabilities: {} });
const context = (await send("browsingContext.getTree", {})).contexts[0].context;
await send("session.subscribe", { events: ["log.entryAdded", "network.beforeRequestSent"] });

// As the protocol writes values: lists, objects as pairs, and numbers that JSON does not have by their names.
function plain(v) {
    if (v.type === "array") return v.value.map(plain);
    if (v.type === "object") return Object.fromEntries(v.value.map(([key, value]) => [key, plain(value)]));
    return v.type === "number" ? Number(v.value) : v.type === "null" ? null : v.value;
}

export async function evaluate(expression) {
    const r = await send("script.evaluate", { expression, target: { context }, awaitPromise: true });
    if (r.type === "exception") throw new Error(r.exceptionDetails.text);
    return plain(r.result);
}

export async function open(file, width, height) {
    await send("browsingContext.setViewport", { context, viewport: { width, height }, devicePixelRatio: 1 });
    await send("browsingContext.navigate", { context, url: "file://" + path.resolve(file), wait: "complete" });
    await sleep(100);
}

export async function picture(file, whole) {
    const r = await send("browsingContext.captureScreenshot", { context, origin: whole ? "document" : "viewport" });
    fs.writeFileSync(file, Buffer.from(r.data, "base64"));
}

// What a PDF says of itself stands in streams that are packed [ISO 32000-1, 7.5.7].
function unpacked(bytes) {
    let text = "";
    for (const found of bytes.toString("latin1").matchAll(/\/Type \/ObjStm[^]*?stream\r?\n/g))
        text += inflateSync(bytes.subarray(found.index + found[0].length)).toString("latin1");
    return text;
}

// Sheets of paper; `paper`: inches.
export async function sheets(paper, file) {
    const cm = 2.54, r = await send("browsingContext.print", { context, background: true, page: { width: cm * paper[0], height: cm * paper[1] } });
    const bytes = Buffer.from(r.data, "base64");
    if (file) fs.writeFileSync(file, bytes);
    return (unpacked(bytes).match(/\/Type\s*\/Page[^s]/g) || []).length;
}

const values = { ArrowLeft: "\uE012", ArrowRight: "\uE014", Home: "\uE011", End: "\uE010", Escape: "\uE00C" }, shift = "\uE008";
export async function key(name, modifiers = 0) {
    const value = values[name] || name, press = [{ type: "keyDown", value }, { type: "keyUp", value }];
    const actions = modifiers ? [{ type: "keyDown", value: shift }, ...press, { type: "keyUp", value: shift }] : press;
    await send("input.performActions", { context, actions: [{ type: "key", id: "keys", actions }] });
}

export async function close() {
    const ended = new Promise(done => child.once("exit", done));
    await send("browser.close", {});
    await Promise.race([ended, sleep(5000)]);
    child.kill();
    fs.rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
}
