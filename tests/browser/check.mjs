// check.mjs FOLDER [PICTURES] -- the pages in FOLDER, as tests/browser.sh wrote them. BROWSER_SPEAKS: how it is spoken to.
import fs from "node:fs";
import path from "node:path";
const { call, close, evaluate, key, open, picture, sheets, sleep, troubles } = await import(process.env.BROWSER_SPEAKS || "./browser.mjs");

const [folder, pictures] = process.argv.slice(2), page = name => path.join(folder, name + ".html");
let passed = 0, failed = 0;
function check(good, what) {
    if (good) passed++;
    else failed++;
    if (!good) console.log("FAILED: " + what);
}
const text = id => evaluate(`document.getElementById("${id}").textContent`);
const paper = { letter: [8.5, 11], A4: [8.27, 11.69] };

async function fits() {
    for (const name of ["pair", "alone", "tall", "days", "si", "hostile", "asks", "monday"])
        for (const width of [320, 390, 768, 1280, 1920]) {
            await open(page(name), width, 900);
            const wide = await evaluate("document.documentElement.scrollWidth");
            check(wide <= width, `${name} at ${width} px scrolls sideways to ${wide}`);
        }
    await open(page("pair"), 1280, 900);
    check((await evaluate("document.getElementById('scrub').getBoundingClientRect().bottom")) <= 900, "scrubber below the fold at 1280 x 900");
}

// What the page shows at a moment against the trace of a run.
async function agrees(run, file, times) {
    const within = { level: ["level_m", 0.56e-3], still: ["still_level_m", 0.56e-3], temperature: ["temperature_K", 0.036], boiling: ["boiling_point_K", 0.036], layer: ["layer_m", 4e-5], afloat: ["layer_kg", 0.18] };
    const rows = fs.readFileSync(path.join(folder, file + ".csv"), "utf8").trim().split("\n").map(l => l.split(","));
    for (const t of times) {
        const s = await evaluate(`stateAt(DATA.runs[${run}], ${t})`), row = rows[1 + Math.round(t * 10)];
        for (const name in within) {
            const [column, off] = within[name], want = Number(row[rows[0].indexOf(column)]);
            check(Math.abs(s[name] - want) <= Math.max(off, name === "afloat" ? 0.011 * want : 0, name === "layer" ? 0.011 * want : 0), `${file} at ${t}: ${name} ${s[name]}, run ${want}`);
        }
    }
}

// At ten times, both tanks.
async function figures() {
    await open(page("pair"), 1280, 900);
    for (const [run, file] of [[0, "quiet"], [1, "boiling"]]) await agrees(run, file, [0, 299.9, 312, 340, 380, 381.5, 382, 390, 700, 1799]);
}

// Each answer leads to what a separate run of its acts gives: figures and verdict.
async function answers() {
    await open(page("asks"), 1280, 900);
    const runs = await evaluate("DATA.stops[0].choices.map(c => c.run)"), verdicts = await evaluate("DATA.runs.map(r => r.verdict)");
    check(runs.length === 4, `four answers, got ${runs.length}`);
    for (const [i, run] of runs.entries()) {
        await agrees(run, `answer-${i + 1}`, [0, 299.9, 312, 340, 380, 420, 450, 500, 700, 1799]);
        const brief = fs.readFileSync(path.join(folder, `answer-${i + 1}.brief`), "utf8").split("\n")[0];
        const found = brief.match(/^(\w+(?: \(possible\))?) +(\d+:\d+(?::\d+)?) +(.*?)(?: {2,}.*)?$/), wanted = found ? `${found[1]} at ${found[2]}: ${found[3]}` : "nothing above NOTICE";
        check(verdicts[run].includes(wanted), `answer ${i + 1}: the page says '${verdicts[run]}', run '${brief}'`);
    }
}

async function keys() {
    await open(page("pair"), 1280, 900);
    const time = () => evaluate("time");
    await evaluate("document.getElementById('stage').focus()");
    await key("End");
    check((await time()) === 1800 && (await evaluate("speed")) === 20, "End; half an hour is shown twenty times as fast");
    await key("Home");
    check((await time()) === 0, "Home");
    await key("ArrowRight");
    check(Math.abs((await time()) - 5) < 1e-9, "Right: five seconds");
    await key(".");
    await key(",");
    check(Math.abs((await time()) - 5) < 1e-9, "a tenth on and back");
    await key("ArrowRight", 8);
    check(Math.abs((await time()) - 300.06) < 0.01, "Shift Right: next event");
    await key("ArrowLeft", 8);
    check((await time()) === 0, "Shift Left: event before");
    await key("<");
    check((await evaluate("speed")) === 5, "slower");
    await key("s");
    check(/to the rim/.test(await text("said")), "S says how it stands");
    await key("m");
    check(await evaluate("still"), "M: less movement");
    await evaluate("document.getElementById('letters').checked = false");
    await key("m");
    check(await evaluate("still"), "letters can be switched off");
    await evaluate("document.getElementById('letters').checked = true; less(false); document.body.tabIndex = -1; document.body.focus()");
    await key("m");
    check(!(await evaluate("still")), "letters are dead outside the replay");
}

// The slow span is entered at its edge, lasts about twelve seconds, and its alert is spoken.
async function slowMotion() {
    await open(page("pair"), 1280, 900);
    const [from, to] = await evaluate("spans[0]");
    await evaluate(`go(${from} - 10); play(true)`);
    let alarm = "", entered = null, began = 0;
    for (let i = 0; i < 400 && (await evaluate("playing")); i++) {
        const t = await evaluate("time");
        if (entered === null && t >= from) [entered, began] = [t, Date.now()];
        if (t >= to) break;
        alarm += await text("alarm");
        await sleep(50);
    }
    const took = (Date.now() - began) / 1000, costs = (await evaluate("costs.slice()")).sort((a, b) => a - b);
    await evaluate("play(false)");
    check(entered !== null && entered - from < 0.3, `slow span entered at ${entered}, begins at ${from}`);
    check(took > 8 && took < 16, `slow span took ${took} s`);
    check(/over the rim/i.test(alarm), "over the rim was an alert");
    check(costs[Math.floor(0.95 * costs.length)] < 8, `95 % of frames under 8 ms, got ${costs[Math.floor(0.95 * costs.length)]}`);
}

// One message in three seconds, alerts apart.
async function speaksSeldom() {
    await open(page("alone"), 1280, 900);
    await evaluate("window.heard = []; new MutationObserver(() => heard.push(performance.now())).observe(document.getElementById('said'), {childList: true, characterData: true, subtree: true}); speed = 300; play(true)");
    await sleep(8000);
    const heard = await evaluate("play(false), heard");
    check(heard.length >= 2 && heard.slice(1, -1).every((t, i) => t - heard[i] > 2990), `spoken at ${heard}`);
    await open(page("pair"), 1280, 900);
    await evaluate("jump(383)");
    const alarm = await text("alarm");
    check(/It comes over the rim.*DANGER/.test(alarm) && !/lets go now/.test(alarm), `past several alerts at once the last counts: ${alarm}`);
}

// Drawing a moment, layout and all: 4 ms of processor, so that a machine a quarter as fast does it in a frame of 60 a second.
async function isCheap() {
    await open(page("pair"), 1280, 900);
    await call("Performance.enable", { timeDomain: "threadTicks" });
    const worked = async () => (await call("Performance.getMetrics")).metrics.find(m => m.name === "TaskDuration").value;
    const draw = n => evaluate(`(() => { for (let i = 0; i < ${n}; i++) { time = 381 + i * 4 / ${n}; paint(); document.body.offsetHeight; } })()`);
    await draw(50);
    const before = await worked();
    await draw(400);
    const cost = (await worked() - before) / 400 * 1000;
    await call("Performance.disable");
    check(cost > 0 && cost < 4, `a frame costs ${cost.toFixed(2)} ms of the processor`);
    if (pictures) console.log(`a frame costs ${cost.toFixed(2)} ms of the processor`);
}

async function nothingJumps() {
    await open(page("pair"), 1280, 900);
    const place = () => evaluate("[...document.querySelectorAll('.reading, .picture')].map(e => { const b = e.getBoundingClientRect(); return [b.top, b.height].join() }).join(' ')");
    const first = await place();
    for (const t of [0, 301, 330, 340, 381, 382, 383, 386, 700, 1800]) {
        await evaluate(`jump(${t})`);
        check((await place()) === first, `tank and panel stand elsewhere at ${t}`);
        const cut = await evaluate("[...document.querySelectorAll('.now, .room')].filter(e => e.scrollHeight > e.clientHeight + 1).length");
        check(cut === 0, `words cut at ${t}`);
    }
    await evaluate("jump(382.1)");
    check(/OVER THE RIM/.test(await evaluate("panels[0].sign.textContent")) && (await evaluate("panels[0].room.classList.contains('over')")), "A over the rim: words and frame");
    await evaluate("jump(382.4)");
    check(/^>/.test(await evaluate("panels[0].number.textContent")) && (await evaluate("panels[0].picture.edge.getAttribute('visibility')")) === "visible", "A: beyond the law a broken edge and more than");
    check((await evaluate("panels[1].sign.textContent")) === "", "B never over the rim");
    await evaluate("jump(360)");
    check(/OVER/.test(await evaluate("panels[0].risk.textContent")), "A is warned of before it lets go");
}

// A lesson stops two seconds before its act, asks, and goes on with the answer; what came of it is told at the end.
async function asks() {
    const stop = async () => {
        await open(page("asks"), 1280, 900);
        await evaluate("go(DATA.stops[0].at - 1); play(true)");
        await sleep(400);
        return evaluate("({asked: !document.getElementById('question').hidden, focus: document.activeElement.id, playing, time, at: DATA.stops[0].at, answers: DATA.stops[0].choices.map(c => c.text)})");
    };
    const first = await stop();
    check(first.asked && !first.playing && first.time === first.at, "the clock stands at the question");
    check(first.focus === "question", "focus is on the question");
    check(!/over the rim/i.test(await text("events")) && /decide/.test(await evaluate("panels[0].figure.textContent")), "nothing beyond the question is shown");
    for (let i = 0; i < first.answers.length; i++)
        for (const byKey of [true, false]) {
            await stop();
            if (byKey) await key(String(i + 1));
            else await evaluate(`document.querySelectorAll("#answers button")[${i}].click()`);
            await sleep(100);
            const after = await evaluate("({playing, title: panels[0].run.title, same: shown[0] === DATA.runs[DATA.stops[0].choices[" + i + "].run], focus: document.activeElement.id})");
            check(after.playing && after.same && after.title === first.answers[i] && after.focus === "play", `answer ${i + 1} leads to its run`);
        }
    await evaluate("jump(DATA.end)");
    check((await text("outcome")).includes(await evaluate("shown[0].outcome")) && (await evaluate("shown[0].outcome")).length > 5, "the outcome is told at the end");
    await stop();
    await key("Escape");
    check(await evaluate("document.getElementById('question').hidden && document.activeElement.id === 'play'"), "Escape leaves the question");
    await evaluate("jump(DATA.stops[0].at + 100)");
    check(await evaluate("document.getElementById('question').hidden"), "scrubbing past does not ask");
    for (const width of [320, 390, 1280]) {
        await open(page("asks"), width, 844);
        await evaluate("go(DATA.stops[0].at - 1); play(true)");
        await sleep(300);
        check((await evaluate("document.getElementById('question').getBoundingClientRect().bottom")) <= 844, `question below the fold at ${width}`);
        check((await evaluate("panels[0].number.getBoundingClientRect().top")) >= 0, `A's number is out of sight at ${width}`);
    }
}

// B laid on A's boil: both are at their boil's return at once, each by its own clock, in tank, list and strip.
async function laid() {
    await open(page("monday"), 1280, 900);
    check(await evaluate("document.getElementById('laying').hidden"), "not laid while a question stands");
    await evaluate("go(DATA.stops[0].at + 1); jump(0)");
    const [later, back] = await evaluate("[shown[0].later, shown[0].rows.t[shown[0].rows.m.indexOf(1)]]");
    check(!(await evaluate("document.getElementById('laying').hidden")) && later > 60, `offered where B is far behind: ${later}`);
    await evaluate(`jump(${back + 1})`);
    check((await evaluate("panels[0].boil.textContent.includes('BOILS') && panels[1].boil.textContent.includes('QUIET')")), "by one clock B is quiet as A boils");
    await evaluate("document.getElementById('laid').click()");
    check((await evaluate("panels.every(p => p.boil.textContent.includes('BOILS'))")), "laid, both boil");
    await evaluate(`jump(${back - 30})`);
    check((await evaluate("panels.every(p => p.boil.textContent.includes('QUIET'))")), "and were quiet before");
    const clocks = await evaluate("panels.map(p => p.clock.textContent)"), own = await evaluate(`clockOf(${back - 30} + shown[0].later)`);
    check(clocks[1].includes(own) && / later$/.test(clocks[1]) && !/later/.test(clocks[0]), `both clocks stand over the tanks: ${clocks}`);
    const [listed, happened] = await evaluate("(() => { const e = events.find(e => e.names[0] === 'B' && /boil is back/.test(e.text)); return [e.time, e.own] })()");
    check(Math.abs(happened - listed - later) < 0.02 && Math.abs(listed - back) < 1, `B's boil is back beside A's in the list: ${listed}`);
    await evaluate("jump(DATA.end)");
    check(/^  10?[0-9:]+/.test(await evaluate("panels[1].clock.textContent")), "B ends where it ended");
    await evaluate("document.getElementById('laid').click()");
    check((await evaluate("panels[1].clock.textContent")) === "" && !(await evaluate("events.some(e => e.own)")), "and taken off again");
}

async function lessMovement() {
    await call("Emulation.setEmulatedMedia", { features: [{ name: "prefers-reduced-motion", value: "reduce" }] });
    await open(page("pair"), 1280, 900);
    await evaluate("play(true)");
    await sleep(400);
    const stands = await evaluate("time");
    await sleep(1200);
    check((await evaluate("time")) === stands && Math.abs(stands - 300.06) < 0.01, `less movement stands on an event, at ${stands}`);
    check((await evaluate("panels[0].picture.load.getAttribute('visibility')")) === "visible", "less movement shows the load that is in");
    await evaluate("play(false)");
    await call("Emulation.setEmulatedMedia", { features: [] });
}

async function names() {
    await open(page("pair"), 1280, 900);
    await evaluate("jump(360)");
    const nodes = (await call("Accessibility.getFullAXTree")).nodes.filter(n => !n.ignored);
    const roles = ["button", "slider", "combobox", "image", "region", "group", "figure", "checkbox"];
    const nameless = nodes.filter(n => roles.includes(n.role?.value) && !n.name?.value);
    check(nameless.length === 0, "without a name: " + nameless.map(n => n.role.value));
    check(nodes.some(n => n.role?.value === "image" && /^A: quiet.*lets go now: over the rim/.test(n.name?.value)), "the picture says its state");
    const small = await evaluate("[...document.querySelectorAll('#controls button, #controls select')].filter(e => { const b = e.getBoundingClientRect(); return b.width < 44 || b.height < 44 }).length");
    check(small === 0, "targets under 44 px");
}

async function onPaper() {
    for (const name of ["pair", "alone", "tall", "si", "asks"]) {
        await open(page(name), 1280, 900);
        for (const size in paper) check((await sheets(paper[size])) === 2, `${name} on ${size} is not two sheets`);
    }
}

// What leads to the lessons keeps each key shut, but on paper.
async function keyOnPaper() {
    const seen = () => evaluate("[...document.querySelectorAll('details')].map(e => getComputedStyle(e, '::details-content').contentVisibility).join()");
    await open(page(path.join("deck", "index")), 1280, 900);
    check((await seen()) === "hidden", "the key is shut on the screen");
    await call("Emulation.setEmulatedMedia", { media: "print" });
    check((await seen()) === "visible", "the key is open on paper");
    await call("Emulation.setEmulatedMedia", { media: "" });
}

async function withoutScript() {
    await call("Emulation.setScriptExecutionDisabled", { value: true });
    await open(page("pair"), 1280, 900).catch(() => 0);
    await sleep(300);
    await call("Emulation.setScriptExecutionDisabled", { value: false });
    check((await evaluate("getComputedStyle(document.getElementById('sheet')).display")) !== "none", "no script: the sheet is there");
    check((await evaluate("document.querySelectorAll('#sheet svg').length")) === 8 && (await evaluate("document.querySelectorAll('#sheet tbody tr').length")) > 8, "no script: stills and table");
    check(await evaluate("document.getElementById('stage').hidden"), "no script: no dead controls");
}

async function others() {
    await open(page("days"), 1280, 900);
    check((await evaluate("DATA.end / speed <= 300 && byId('speed').value === String(speed)")), "days are shown in five minutes");
    await evaluate("jump(DATA.end)");
    check(/\+3d$/.test(await text("clock")), "the clock says the day");
    await open(page("hostile"), 1280, 900);
    check((await evaluate("document.querySelectorAll('img').length")) === 0 && (await evaluate("panels[0].figure.querySelector('h2').textContent")).includes("</script><img"), "a title is text");
    await open(page("tall"), 1280, 900);
    await evaluate("jump(shown[0].over + 1)");
    check((await evaluate("panels.map(p => p.picture.svg.getBoundingClientRect().height)")).every(h => h > 100), "two tanks of different size");
    await open(page("monday"), 1280, 900);
    await evaluate("go(DATA.stops[0].at + 1); jump(shown[0].rows.t[shown[0].rows.l.indexOf(Math.max(...shown[0].rows.l))])");
    check(/^> \d+ in$/.test(await evaluate("panels[0].number.textContent")), "Monday: over by more than the law knows, got " + (await evaluate("panels[0].number.textContent")));
    await open(page("si"), 1280, 900);
    check(/cm|mm/.test(await evaluate("panels[0].number.textContent")), "SI units");
    for (const name of ["pair", "alone", "tall", "days", "si", "asks"]) check(fs.statSync(page(name)).size <= 204800, name + " is over 200 KiB");
}

// Every shipped scenario, at eleven moments: no figure that is none, in words or in the drawing.
async function everyScenario() {
    for (const file of fs.readdirSync(folder).filter(f => f.startsWith("every-"))) {
        const before = troubles.length;
        await open(path.join(folder, file), 1280, 900);
        const bad = await evaluate(`(() => { const bad = []; for (let i = 0; i <= 10; i++) { jump(DATA.end * i / 10); const text = document.body.innerHTML; if (/NaN|undefined|Infinity/.test(text.replace(/<script[^]*/, ""))) bad.push(time) } return bad })()`);
        check(bad.length === 0 && troubles.length === before, `${file}: no number at ${bad}; ${troubles.slice(before)}`);
    }
}

async function pictured() {
    const at = { pair: 382.2, tall: 400, si: 605, alone: 3000, days: 240000 };
    for (const name in at)
        for (const [width, height] of [[1280, 900], [390, 844], [320, 700], [1920, 1080]]) {
            await open(page(name), width, height);
            await evaluate(`jump(${at[name]})`);
            await picture(path.join(pictures, `${name}-${width}.png`));
        }
    await open(page("pair"), 1280, 900);
    await evaluate("jump(382.2)");
    await call("Emulation.setEmulatedVisionDeficiency", { type: "achromatopsia" });
    await picture(path.join(pictures, "grey.png"));
    await call("Emulation.setEmulatedVisionDeficiency", { type: "none" });
    for (const [name, feature, value] of [["forced", "forced-colors", "active"], ["dark", "prefers-color-scheme", "dark"]]) {
        await call("Emulation.setEmulatedMedia", { features: [{ name: feature, value }] });
        await sleep(100);
        await picture(path.join(pictures, name + ".png"));
        await call("Emulation.setEmulatedMedia", { features: [] });
    }
    for (const name of ["pair", "alone"]) {
        await open(page(name), 1280, 900);
        await sheets(paper.letter, path.join(pictures, name + ".pdf"));
    }
}

// What only the debugging pipe tells: cost, what is asked of media, the tree that a screen reader reads, no script.
const byPipe = [isCheap, lessMovement, names, keyOnPaper, withoutScript];
const parts = [fits, figures, answers, keys, slowMotion, speaksSeldom, nothingJumps, asks, laid, onPaper, others, everyScenario];
for (const part of call ? [...parts, ...byPipe] : parts)
    await part().catch(e => check(false, part.name + ": " + e.message));
if (pictures) await pictured();
check(troubles.length === 0, troubles.join("; "));
await close();
console.log(`${passed} passed, ${failed} failed, 0 skipped`);
process.exit(failed > 0 ? 1 : 0);
