// Follows the making of runs by server-sent events and writes step and percent into the page; loads the page again when making begins or ends.
const panels = [...document.querySelectorAll("[data-making]")];
if (panels.length > 0) {
  const feed = new EventSource("/api/progress");
  const heard = new Map();
  feed.addEventListener("making", (event) => {
    const report = JSON.parse(event.data);
    for (const panel of panels.filter((p) => p.dataset.making === report.runId)) {
      panel.querySelector("progress").value = report.donePercent;
      panel.querySelector("[data-percent]").textContent = `${Math.floor(report.donePercent)} %`;
      const step = panel.querySelector("[data-step]");
      if (step.textContent !== report.step) step.textContent = report.step;
      const changed = panel.dataset.busy !== String(report.busy);
      if (changed && !heard.has(report.runId)) {
        heard.set(report.runId, true);
        location.reload();
      }
    }
  });
  window.addEventListener("pagehide", () => feed.close());
}
for (const button of document.querySelectorAll("[data-print]")) {
  button.hidden = false;
  button.addEventListener("click", () => window.print());
}
