// browser.mjs -- a browser without a window, spoken to over its debugging pipe; no library.
import { spawn } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";

const profile = fs.mkdtempSync(path.join(os.tmpdir(), "boilback-browser-"));
const program = process.env.BROWSER_PROGRAM || "chromium";
const flags = ["--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--remote-debugging-pipe", "--user-data-dir=" + profile, "about:blank"];
const child = spawn(program, flags, { stdio: ["ignore", "ignore", "ignore", "pipe", "pipe"] });
const waiting = new Map();
let count = 0, rest = "";

export const troubles = []; // exceptions, and requests for anything but the page itself

function heard(message) {
    if (waiting.has(message.id)) {
        waiting.get(message.id)(message);
        waiting.delete(message.id);
    } else if (message.method === "Runtime.exceptionThrown")
        troubles.push("exception: " + (message.params.exceptionDetails.exception?.description || message.params.exceptionDetails.text));
    else if (message.method === "Network.requestWillBeSent" && !/^(file|about|data):/.test(message.params.request.url))
        troubles.push("request: " + message.params.request.url);
    else if (message.method === "Log.entryAdded" && message.params.entry.level === "error")
        troubles.push("error: " + message.params.entry.text);
}

child.stdio[4].on("data", bytes => {
    rest += bytes;
    for (let end; (end = rest.indexOf("\0")) >= 0; rest = rest.slice(end + 1)) heard(JSON.parse(rest.slice(0, end)));
});

function send(method, params, sessionId) {
    return new Promise(done => {
        waiting.set(++count, done);
        child.stdio[3].write(JSON.stringify({ id: count, method, params: params || {}, sessionId }) + "\0");
    });
}

const target = await send("Target.createTarget", { url: "about:blank" });
const session = await send("Target.attachToTarget", { targetId: target.result.targetId, flatten: true });
export const call = async (method, params) => (await send(method, params, session.result.sessionId)).result;
for (const domain of ["Page", "Runtime", "Network", "Accessibility", "Log"]) await call(domain + ".enable");

export const sleep = ms => new Promise(done => setTimeout(done, ms));

export async function evaluate(expression) {
    const r = await call("Runtime.evaluate", { expression, awaitPromise: true, returnByValue: true });
    if (r.exceptionDetails) throw new Error(r.exceptionDetails.exception?.description || r.exceptionDetails.text);
    return r.result.value;
}

export async function open(file, width, height) {
    await call("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor: 1, mobile: width < 500 });
    await call("Page.navigate", { url: "about:blank" });
    await call("Page.navigate", { url: "file://" + path.resolve(file) });
    for (let i = 0; i < 100 && (await evaluate("document.readyState")) !== "complete"; i++) await sleep(20);
    await sleep(100);
}

export async function picture(file, whole) {
    const r = await call("Page.captureScreenshot", { format: "png", captureBeyondViewport: !!whole });
    fs.writeFileSync(file, Buffer.from(r.data, "base64"));
}

// Sheets of paper; `paper`: inches.
export async function sheets(paper, file) {
    const r = await call("Page.printToPDF", { paperWidth: paper[0], paperHeight: paper[1], printBackground: true });
    const bytes = Buffer.from(r.data, "base64");
    if (file) fs.writeFileSync(file, bytes);
    return (bytes.toString("latin1").match(/\/Type\s*\/Page[^s]/g) || []).length;
}

const codes = { " ": 32, ArrowLeft: 37, ArrowRight: 39, Home: 36, End: 35, Escape: 27 };
export async function key(name, modifiers = 0) {
    const p = { key: name, modifiers, windowsVirtualKeyCode: codes[name] || name.toUpperCase().charCodeAt(0) };
    if (name.length === 1) p.text = name;
    await call("Input.dispatchKeyEvent", { type: "keyDown", ...p });
    await call("Input.dispatchKeyEvent", { type: "keyUp", ...p });
}

export async function close() {
    const ended = new Promise(done => child.once("exit", done));
    await send("Browser.close");
    await Promise.race([ended, sleep(5000)]);
    child.kill();
    fs.rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
}
