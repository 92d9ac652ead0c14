// Finds functions by their words: each entry of the list carries the words that find it. Everything stays on this page.
const field = document.getElementById("search");
const found = document.getElementById("found");
const fillers = new Set(field.dataset.fillers.split(" "));
const entries = [...document.querySelectorAll("#all li")];

function show() {
  const words = field.value
    .toLowerCase()
    .split(/[\s_,.()=?!]+/)
    .filter((word) => word !== "" && word !== "sill" && !fillers.has(word));
  let count = 0;
  for (const entry of entries) {
    const fits = words.every((word) => entry.dataset.words.includes(word));
    entry.hidden = !fits;
    if (fits) count++;
  }
  found.textContent = words.length === 0 ? "" : `${count} of ${entries.length} functions`;
}

field.addEventListener("input", show);
