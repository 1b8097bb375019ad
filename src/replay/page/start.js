/* Where it slows down about the highest level of all that is shown; null: nowhere. */
function decisive() {
    const heights = shown.flatMap(run => run.rows.t.map((t, i) => [run.rows.l[i] / run.depth, t - lagOf(run)])), top = heights.reduce((a, b) => b[0] > a[0] ? b : a);
    return spanAt(top[1]) || spans[0] || null;
}

/* Not before a question is answered: B would show what comes. */
function offerLaying() {
    const can = shown.length > 1 && shown[0].later !== 0 && horizon >= DATA.end;
    laid = laid && can;
    byId("laying").hidden = !can;
    byId("laid").checked = laid;
    if (can) write(byId("lag"), "B on A's boil: B is shown " + lagWords(shown[0].later));
}

function begin() {
    byId("tanks").textContent = "";
    panels = shown.map(panelOf);
    panels.slice(1).forEach(p => p.figure.classList.add("other"));
    offerLaying();
    spans = shown.flatMap(run => run.slow.map(x => [x[0] - lagOf(run), x[1] - lagOf(run), x[2]])).sort((a, b) => a[0] - b[0]);
    listEvents();
    strips();
    paint();
    rename();
}

function strips() {
    const fast = horizon < DATA.end ? null : decisive();
    byId("close").style.display = fast ? "" : "none";
    cursors = [stripOf(byId("whole"), shown, 0, DATA.end)];
    if (fast) cursors.push(stripOf(byId("close"), shown, fast[0], fast[1]));
}

function connect() {
    const click = (id, does) => byId(id).onclick = does;
    click("play", () => play(!playing));
    click("before", () => nearEvent(false));
    click("after", () => nearEvent(true));
    click("back", () => jump(time - 5));
    click("on", () => jump(time + 5));
    click("leave", leave);
    click("again", askAgain);
    click("help", () => {
        byId("keys").hidden = !byId("keys").hidden;
        byId("help").setAttribute("aria-expanded", String(!byId("keys").hidden));
    });
    byId("laid").onchange = e => {
        laid = e.target.checked;
        begin();
        say(howItStands());
    };
    byId("still").onchange = e => less(e.target.checked);
    byId("speed").onchange = e => speed = Number(e.target.value);
    byId("scrub").oninput = e => jump(Number(e.target.value) / 10);
    byId("stage").addEventListener("keydown", pressed);
    window.addEventListener("resize", () => {
        strips();
        paint();
    });
}

/* As fast as shows all of it in five minutes to those who wait for it, twenty times at the least. */
function speeds() {
    const all = [1, 5, 20, 60, 300, 3600].filter(n => n <= 60 || DATA.end > 48 * n);
    speed = all.find(n => n >= 20 && DATA.end / n <= 300) || all[all.length - 1];
    for (const n of all) {
        const option = document.createElement("option");
        option.value = n;
        option.textContent = n === 1 ? "as it is" : n + " x";
        option.selected = n === speed;
        byId("speed").append(option);
    }
}

document.documentElement.classList.add("scripted");
byId("stage").hidden = false;
byId("stage").setAttribute("aria-label", DATA.runs.length > 1 ? "Replay of two runs" : "Replay");
byId("scrub").max = Math.ceil(DATA.end * 10);
byId("still").checked = still;
speeds();
connect();
begin();
