/** What a page can do with <ww-gear>: read its run, move its clock, listen to it. */
/* global document, Option */
const gear = document.querySelector('#swing');
const cards = document.querySelector('#cards');
const told = document.querySelector('#told');

gear.addEventListener('ww-run', ({ detail }) => {
  cards.replaceChildren(
    ...detail.cards.map(({ name, title }) => new Option(title, name, false, name === detail.card)),
  );
});

gear.addEventListener('ww-time', ({ detail }) => {
  const last = gear.run.flags.filter((f) => f.severity !== 'note' && f.from <= detail.time).at(-1);
  told.value = `${detail.time.toFixed(2)} s${last ? `: ${last.title}` : ''}`;
});

cards.addEventListener('change', () => {
  gear.card = cards.value;
});

document.querySelector('#closing').addEventListener('click', () => {
  const { moving, start, locked } = gear.run.timings[0];
  gear.time = start + Math.max(moving, locked);
});
