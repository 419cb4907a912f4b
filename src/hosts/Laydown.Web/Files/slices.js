// Shows the slice of the gamut that the slider stands at; without script the middle one stands.
for (const group of document.querySelectorAll("[data-slices]")) {
  const choice = group.querySelector("[data-slice-choice]");
  const show = () => {
    for (const slice of group.querySelectorAll("[data-slice]")) slice.hidden = slice.dataset.slice !== choice.value;
  };
  choice.addEventListener("input", show);
  show();
}
