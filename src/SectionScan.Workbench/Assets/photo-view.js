// Zoom and pan over a photo with outlines. Of the photo only what is seen is drawn; the outlines are drawn anew at every zoom, so that
// their lines stay thin and sharp far below a pixel.
export function open(root, model) {
  const canvas = root.querySelector('.seen');
  const pen = canvas.getContext('2d');
  const drawing = root.querySelector('svg');
  const figure = root.closest('figure');
  const scaleText = figure.querySelector('[data-view-scale]');
  const pointers = new Map();
  const most = 60;
  let scale = 1, left = 0, top = 0;
  const width = () => Number(root.dataset.width), height = () => Number(root.dataset.height);
  const fitScale = () => Math.min(root.clientWidth / width(), root.clientHeight / height());

  // The photo at several sizes, each half as wide as the one before: a frame reads about as many pixels as the screen has, however large the
  // photo is. They are decoded beside the page's own work, which goes on meanwhile.
  let levels = [];
  function forget() {
    levels.forEach(level => level.bitmap.close());
    levels = [];
    delete root.dataset.shown;
  }

  async function learn() {
    const address = root.dataset.photo, isWanted = () => root.isConnected && root.dataset.photo === address;
    forget();
    try {
      const answer = await fetch(address);
      if (!answer.ok) { throw new Error(answer.statusText); }
      const photo = await answer.blob();
      for (let wide = width(); wide === width() || wide > 700; wide = Math.ceil(wide / 2)) {
        const bitmap = await createImageBitmap(photo, wide === width() ? {} : { resizeWidth: wide, resizeHeight: Math.round(wide * height() / width()), resizeQuality: 'medium' });
        if (!isWanted()) { bitmap.close(); return; }
        levels.push({ bitmap, ratio: bitmap.width / width() });
        root.dataset.shown = 'at one size';
        place();
        if (looked) { magnify(...looked); }
      }
      root.dataset.shown = 'at every size';
    } catch {
      if (isWanted()) { scaleText.textContent = 'The photo cannot be shown: reload the page.'; }
    }
  }

  // However many events come, the view is drawn once a frame.
  let isAwaited = false;
  function place() {
    if (!isAwaited) { isAwaited = true; requestAnimationFrame(draw); }
  }

  function draw() {
    isAwaited = false;
    scale = Math.min(most, Math.max(0.5 * fitScale(), scale));
    const wide = root.clientWidth, high = root.clientHeight, dots = window.devicePixelRatio || 1;
    if (canvas.width !== Math.round(wide * dots) || canvas.height !== Math.round(high * dots)) {
      canvas.width = Math.round(wide * dots);
      canvas.height = Math.round(high * dots);
    }
    drawing.setAttribute('viewBox', `${left} ${top} ${wide / scale} ${high / scale}`);
    scaleText.textContent = levels.length === 0 ? 'Reading the photo …' : `${scale >= 1 ? scale.toFixed(1) : scale.toFixed(2)} screen px per photo px`;
    const level = levels.findLast(each => each.ratio >= scale * dots) ?? levels[0];
    pen.clearRect(0, 0, canvas.width, canvas.height);
    if (!level) { return; }
    const [x0, y0] = [Math.max(0, left), Math.max(0, top)];
    const [x1, y1] = [Math.min(width(), left + wide / scale), Math.min(height(), top + high / scale)];
    if (x1 <= x0 || y1 <= y0) { return; }
    pen.imageSmoothingEnabled = scale <= 3;
    const [r, s] = [level.ratio, scale * dots];
    pen.drawImage(level.bitmap, x0 * r, y0 * r, (x1 - x0) * r, (y1 - y0) * r, (x0 - left) * s, (y0 - top) * s, (x1 - x0) * s, (y1 - y0) * s);
  }

  function zoom(factor, x = root.clientWidth / 2, y = root.clientHeight / 2) {
    const before = scale;
    scale = Math.min(most, Math.max(0.5 * fitScale(), scale * factor));
    left += x / before - x / scale;
    top += y / before - y / scale;
    place();
  }

  function frame(box, margin) {
    scale = Math.min(root.clientWidth / (box.width * margin), root.clientHeight / (box.height * margin));
    left = box.x + box.width / 2 - root.clientWidth / scale / 2;
    top = box.y + box.height / 2 - root.clientHeight / scale / 2;
    place();
  }

  const fit = () => frame({ x: 0, y: 0, width: width(), height: height() }, 1);
  const section = () => { const chosen = drawing.querySelector('.is-chosen'); if (chosen) { frame(chosen.getBBox(), 1.3); } };

  function wheel(e) {
    e.preventDefault();
    const box = root.getBoundingClientRect();
    zoom(Math.exp(-e.deltaY * (e.deltaMode ? 0.05 : 0.0018)), e.clientX - box.left, e.clientY - box.top);
  }

  // What lies under the pointer, larger, while places are picked: a finger or an arrow hides what it points at.
  const glass = root.querySelector('.magnifier');
  let looked = null;
  function magnify(x, y) {
    const whole = levels[0];
    looked = [x, y];
    if (!root.dataset.tool || !whole) { glass.hidden = true; return; }
    const side = glass.width, power = Math.max(4, 2.5 * scale), pen = glass.getContext('2d');
    const px = left + x / scale, py = top + y / scale, seen = side / power, ratio = whole.ratio;
    glass.hidden = false;
    glass.classList.toggle('is-left', x > root.clientWidth - side - 40 && y < side + 40);
    pen.imageSmoothingEnabled = power < 8;
    pen.fillStyle = '#101416';
    pen.fillRect(0, 0, side, side);
    pen.drawImage(whole.bitmap, (px - seen / 2) * ratio, (py - seen / 2) * ratio, seen * ratio, seen * ratio, 0, 0, side, side);
    for (const [colour, wide] of [['#101416', 3], ['#ffe08a', 1]]) {
      pen.strokeStyle = colour;
      pen.lineWidth = wide;
      pen.beginPath();
      pen.moveTo(side / 2, 0); pen.lineTo(side / 2, side / 2 - 8); pen.moveTo(side / 2, side / 2 + 8); pen.lineTo(side / 2, side);
      pen.moveTo(0, side / 2); pen.lineTo(side / 2 - 8, side / 2); pen.moveTo(side / 2 + 8, side / 2); pen.lineTo(side, side / 2);
      pen.stroke();
    }
  }

  function look(e) {
    const box = root.getBoundingClientRect();
    magnify(e.clientX - box.left - root.clientLeft, e.clientY - box.top - root.clientTop);
  }

  // A place on the photo, in pixels counted from the centre of the first one.
  function pick(x, y) {
    if (root.dataset.tool) { model.invokeMethodAsync('Pick', left + x / scale - 0.5, top + y / scale - 0.5); }
  }

  let pressed = null;
  function down(e) { look(e); root.setPointerCapture(e.pointerId); pointers.set(e.pointerId, e); pressed = pointers.size === 1 ? e : null; }

  function move(e) {
    look(e);
    const last = pointers.get(e.pointerId);
    if (!last) { return; }
    if (pointers.size === 1) {
      left -= (e.clientX - last.clientX) / scale;
      top -= (e.clientY - last.clientY) / scale;
      place();
    } else if (pointers.size === 2) {
      const other = [...pointers.values()].find(p => p.pointerId !== e.pointerId);
      const gap = p => Math.hypot(p.clientX - other.clientX, p.clientY - other.clientY);
      const box = root.getBoundingClientRect();
      zoom(gap(e) / Math.max(1, gap(last)), (e.clientX + other.clientX) / 2 - box.left, (e.clientY + other.clientY) / 2 - box.top);
    }
    pointers.set(e.pointerId, e);
  }

  function up(e) {
    pointers.delete(e.pointerId);
    if (pressed && e.type === 'pointerup' && Math.hypot(e.clientX - pressed.clientX, e.clientY - pressed.clientY) < 4) {
      const box = root.getBoundingClientRect();
      pick(e.clientX - box.left - root.clientLeft, e.clientY - box.top - root.clientTop);
    }
    pressed = null;
  }

  function key(e) {
    const step = (e.shiftKey ? 4 : 60) / scale;
    const acts = {
      '+': () => zoom(1.25), '=': () => zoom(1.25), '-': () => zoom(0.8), '0': fit, Enter: () => pick(root.clientWidth / 2, root.clientHeight / 2),
      ArrowLeft: () => { left -= step; place(); }, ArrowRight: () => { left += step; place(); },
      ArrowUp: () => { top -= step; place(); }, ArrowDown: () => { top += step; place(); },
    };
    if (acts[e.key] && !e.ctrlKey && !e.metaKey) { e.preventDefault(); acts[e.key](); magnify(root.clientWidth / 2, root.clientHeight / 2); }
  }

  function tool(e) {
    const wanted = e.target.closest('[data-view]')?.dataset.view;
    ({ in: () => zoom(1.5), out: () => zoom(1 / 1.5), fit, section })[wanted]?.();
  }

  const watch = new ResizeObserver(() => place());
  root.addEventListener('wheel', wheel, { passive: false });
  root.addEventListener('pointerdown', down);
  root.addEventListener('pointermove', move);
  root.addEventListener('pointerup', up);
  root.addEventListener('pointercancel', up);
  root.addEventListener('pointerleave', () => { glass.hidden = true; looked = null; });
  root.addEventListener('keydown', key);
  figure.addEventListener('click', tool);
  watch.observe(root);
  fit();
  learn();
  return { show: () => { fit(); learn(); }, section, close: () => { watch.disconnect(); forget(); figure.removeEventListener('click', tool); } };
}
