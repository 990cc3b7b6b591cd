// A hand on a section: its handles are dragged with mouse or finger, keys move it in steps. The page works out and draws every step; one step
// is on its way at a time, the newest waits.
export function open(root, model) {
  let begun = null, waiting = null, isBusy = false;

  async function send() {
    if (isBusy || !waiting) { return; }
    isBusy = true;
    const next = waiting;
    waiting = null;
    try { await next(); } finally { isBusy = false; }
    send();
  }

  function queue(act) { waiting = act; send(); }

  // Where the pointer is in the section, mm.
  function place(e) {
    const figure = root.querySelector('[data-hand-figure]');
    const p = new DOMPoint(e.clientX, e.clientY).matrixTransform(figure.getScreenCTM().inverse());
    return { x: p.x, y: -p.y };
  }

  async function down(e) {
    const handle = e.target.closest('[data-hand]');
    if (!handle || begun) { return; }
    e.preventDefault();
    root.focus({ preventScroll: true });
    root.setPointerCapture(e.pointerId);
    const from = place(e), centre = { x: Number(handle.dataset.x), y: Number(handle.dataset.y) };
    const grip = begun = { id: e.pointerId, kind: handle.dataset.hand, from, centre, last: from, hand: null };
    const hand = await model.invokeMethodAsync('Hand');
    grip.hand = hand;
    if (begun === grip) { follow(); }
  }

  function follow() {
    const { kind, from, centre, last, hand } = begun;
    if (!hand) { return; }
    if (kind === 'move') {
      const [x, y] = [hand[0] + last.x - from.x, hand[1] + last.y - from.y];
      queue(() => model.invokeMethodAsync('Try', x, y, hand[2]));
    } else {
      const angle = p => Math.atan2(p.y - centre.y, p.x - centre.x) * 180 / Math.PI;
      let turn = hand[2] + angle(last) - angle(from);
      turn -= 360 * Math.round(turn / 360);
      queue(() => model.invokeMethodAsync('Try', hand[0], hand[1], turn));
    }
  }

  function move(e) {
    if (begun?.id !== e.pointerId) { return; }
    begun.last = place(e);
    follow();
  }

  function up(e) {
    if (begun?.id !== e.pointerId) { return; }
    const isGone = e.type === 'pointercancel';
    begun = null;
    const last = waiting;
    queue(async () => {
      if (last) { await last(); }
      await model.invokeMethodAsync(isGone ? 'Forget' : 'Keep');
    });
  }

  const steps = {
    ArrowLeft: [-1, 0, 0], ArrowRight: [1, 0, 0], ArrowUp: [0, 1, 0], ArrowDown: [0, -1, 0],
    ',': [0, 0, 1], '<': [0, 0, 1], '.': [0, 0, -1], '>': [0, 0, -1],
  };

  function key(e) {
    if (e.ctrlKey || e.metaKey || e.altKey) { return; }
    const step = steps[e.key], size = e.shiftKey ? 1 : 0.1;
    if (step) {
      e.preventDefault();
      const before = waiting;
      queue(async () => {
        if (before) { await before(); }
        const hand = await model.invokeMethodAsync('Hand');
        await model.invokeMethodAsync('Try', ...hand.map((value, i) => value + size * step[i]));
      });
    } else if (e.key === 'Enter') { e.preventDefault(); keep(); }
    else if (e.key === 'Escape') { e.preventDefault(); queue(() => model.invokeMethodAsync('Forget')); }
  }

  function keep() {
    const before = waiting;
    queue(async () => {
      if (before) { await before(); }
      await model.invokeMethodAsync('Keep');
    });
  }

  // Whoever goes on with the keyboard keeps what is seen.
  function leave(e) { if (!begun && !root.contains(e.relatedTarget)) { keep(); } }

  root.addEventListener('pointerdown', down);
  root.addEventListener('pointermove', move);
  root.addEventListener('pointerup', up);
  root.addEventListener('pointercancel', up);
  root.addEventListener('keydown', key);
  root.addEventListener('focusout', leave);
  return { close: () => { root.removeEventListener('focusout', leave); } };
}
