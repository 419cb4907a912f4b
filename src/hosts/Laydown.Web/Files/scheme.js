// Light or dark: follows the machine unless a person chose. Runs before the page is drawn, so that nothing flashes.
(() => {
  const root = document.documentElement;
  const chosen = () => { try { return localStorage.getItem("scheme"); } catch { return null; } };
  const apply = (value) => {
    if (value === "light" || value === "dark") root.dataset.scheme = value;
    else delete root.dataset.scheme;
  };
  apply(chosen());
  document.addEventListener("DOMContentLoaded", () => {
    const group = document.getElementById("scheme");
    if (!group) return;
    group.hidden = false;
    for (const input of group.querySelectorAll("input")) {
      input.checked = input.value === (chosen() ?? "auto");
      input.addEventListener("change", () => {
        try { localStorage.setItem("scheme", input.value); } catch { /* private window: the choice lasts for this page */ }
        apply(input.value);
      });
    }
  });
})();
