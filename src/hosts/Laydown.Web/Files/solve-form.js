// The form that solves: previews on the light table while sliders are dragged, and how far the solving in full is.
const form = document.querySelector("[data-solve-form]");
const table = () => document.querySelector("[data-light-table]")?.lightTable;
if (form) {
  const weight = form.elements.weight, strength = form.elements.strength;
  const start = form.querySelector("[data-preview-start]"), end = form.querySelector("[data-preview-end]"), said = form.querySelector("[data-preview-said]");
  let on = false, asked = false, again = false;
  const words = () => {
    const w = Number(weight.value);
    const text = Math.abs(w) < 0.01 ? "balanced" : `${w < 0 ? "day" : "night"} first, ${10 ** Math.abs(w) < 9.95 ? (10 ** Math.abs(w)).toFixed(1) : "10"} to 1`;
    form.querySelector("[data-weight-said]").textContent = text;
    weight.setAttribute("aria-valuetext", text);
    form.querySelector("[data-strength-said]").textContent = `${strength.value} %`;
  };
  const preview = async () => {
    if (!on) return;
    if (asked) { again = true; return; }
    asked = true;
    said.textContent ||= "Reads the pictures for a preview.";
    try {
      const query = new URLSearchParams(new FormData(form));
      query.delete("__RequestVerificationToken");
      query.set("lift", form.dataset.lift);
      query.set("exposure", form.dataset.exposure);
      const began = performance.now(), answer = await fetch(`${form.dataset.preview}?${query}`);
      if (!answer.ok) {
        const { result } = await answer.json();
        said.textContent = `No preview: ${result.faults.map((f) => `${f.field}: found ${f.found}; wanted ${f.wanted}`).join("; ")}`;
      } else {
        const size = JSON.parse(answer.headers.get("Laydown-Preview"));
        await table().preview(size, answer.body);
        form.dataset.previewed = String(Number(form.dataset.previewed ?? 0) + 1);
        said.textContent = `Preview of ${size.widthPx} × ${size.heightPx} pixels, reckoned in ${Math.round(size.milliseconds)} ms, shown after ${Math.round(performance.now() - began)} ms. Contrast is kept only in full.`;
      }
    } catch {
      said.textContent = "No preview: the shop does not answer.";
    } finally {
      asked = false;
      if (again) { again = false; preview(); }
    }
  };
  form.addEventListener("input", () => { words(); preview(); });
  start.hidden = !table();
  start.addEventListener("click", () => { on = true; start.hidden = true; end.hidden = false; preview(); document.getElementById("table").scrollIntoView(); });
  end.addEventListener("click", () => { on = false; start.hidden = false; end.hidden = true; said.textContent = ""; table().endPreview(); });
  words();
}
const solving = document.querySelector("[data-solving]");
if (solving) {
  const look = async () => {
    try {
      const { result } = await (await fetch(solving.dataset.solving, { cache: "no-store" })).json();
      solving.querySelector("progress").value = result.donePercent;
      solving.querySelector("[data-percent]").textContent = `${Math.floor(result.donePercent)} %`;
      const step = solving.querySelector("[data-step]");
      if (step.textContent !== result.step) step.textContent = result.step;
      if (!result.busy) {
        if (result.lookId) location.assign(`/looks/${encodeURIComponent(solving.dataset.item)}/${encodeURIComponent(result.lookId)}`);
        else location.reload();
        return;
      }
    } catch { /* asked again */ }
    setTimeout(look, 500);
  };
  look();
}
