// The page around package checker: it starts the engine, hands it what people choose and type, and
// shows what it answers. It keeps nothing and sends nothing.
(async () => {
  "use strict";
  const by = id => document.getElementById(id);
  const held = id => by(id).textContent;

  // unpacked is what the page holds compressed.
  function unpacked(id) {
    const letters = atob(held(id).trim());
    const packed = new Uint8Array(letters.length);
    for (let i = 0; i < letters.length; i++) packed[i] = letters.charCodeAt(i);
    const headers = { "Content-Type": id === "engine" ? "application/wasm" : "application/json" };
    return new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip")), { headers });
  }

  async function start() {
    const go = new Go();
    const engine = await WebAssembly.instantiateStreaming(unpacked("engine"), go.importObject); // compiled while it is unpacked
    go.run(engine.instance);
    const fault = tenthChecker.open(await unpacked("house").text(), await unpacked("catalogs").text());
    if (fault) throw new Error(fault);
  }

  const known = [...by("page").dataset.languages.split(" ")];
  let language = (navigator.languages || []).map(l => l.slice(0, 2)).find(l => known.includes(l)) || "en";
  let lastCode = "";

  function draw() {
    document.documentElement.lang = language;
    by("page").innerHTML = tenthChecker.body(language, by("page").dataset.made);
    document.title = by("page").querySelector("h1").textContent;
    by("language").onchange = e => { language = e.target.value; draw(); rest(); by("language").focus(); };
    by("photo").onchange = e => photo(e.target.files[0]);
    by("paste").onsubmit = e => { e.preventDefault(); check(by("text").value); };
    by("print").onclick = () => print();
    by("save").onclick = save;
    if (lastCode) check(lastCode);
  }

  // rest draws the calculator and the posted rates; reading them all takes a phone a while.
  function rest() {
    by("rest").innerHTML = tenthChecker.rest(language);
    by("edition").onchange = boxes;
    by("rates").onchange = e => rates(e.target.files[0]);
    by("typed").onsubmit = e => { e.preventDefault(); work(e.target); };
    boxes();
  }

  function boxes() { by("boxes").innerHTML = tenthChecker.form(language, by("edition").value); }

  function check(text) {
    lastCode = text;
    delete by("checked").dataset.ready;
    by("checked").innerHTML = tenthChecker.check(language, text);
    performance.mark("told");
    setTimeout(() => { // once the answer stands on the screen
      if (text !== lastCode) return;
      if (by("more")) by("more").innerHTML = tenthChecker.more(language, text);
      by("checked").dataset.ready = "yes";
    });
  }

  // photo looks for the square in a picture at several sizes: a sharp one is read small, a faint one
  // large, and where the reader misses a corner at one size it finds it at another.
  async function photo(file) {
    if (!file) return;
    by("busy").textContent = "…";
    let text = "";
    try {
      const picture = await createImageBitmap(file);
      for (const side of [900, 1300, 700, 1700, 1100, 2400, 500, 1500]) {
        const scale = side / Math.max(picture.width, picture.height);
        const canvas = document.createElement("canvas");
        canvas.width = Math.round(picture.width * scale);
        canvas.height = Math.round(picture.height * scale);
        const paint = canvas.getContext("2d", { willReadFrequently: true });
        paint.drawImage(picture, 0, 0, canvas.width, canvas.height);
        const points = paint.getImageData(0, 0, canvas.width, canvas.height).data;
        text = tenthChecker.scan(new Uint8Array(points.buffer), canvas.width, canvas.height);
        if (text) break;
      }
    } catch (fault) { text = ""; }
    by("busy").textContent = "";
    check(text);
  }

  async function rates(file) {
    if (!file) return;
    const said = tenthChecker.add(language, file.name, await file.text());
    rest();
    by("opened").textContent = said;
  }

  function work(form) {
    const typed = Object.fromEntries([...new FormData(form)].filter(([name]) => name));
    by("worked").innerHTML = tenthChecker.work(language, by("edition").value, by("day").value, JSON.stringify(typed));
    by("worked").dataset.ready = "yes";
  }

  function save() {
    const shown = "<!doctype html><meta charset=utf-8><title>" + document.title + "</title><style>" +
      document.querySelector("style").textContent + "</style><main>" + by("checked").innerHTML + by("worked").innerHTML + "</main>";
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([shown], { type: "text/html" }));
    link.download = "ticket.html";
    link.click();
    URL.revokeObjectURL(link.href);
  }

  try {
    await start();
    draw();
    by("page").dataset.ready = "yes";
    setTimeout(() => { rest(); by("rest").dataset.ready = "yes"; }, 200);
  } catch (fault) {
    by("loading").textContent = "This browser cannot run the page: " + fault.message;
  }
})();
