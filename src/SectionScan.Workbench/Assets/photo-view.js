// Zoom and pan over a photo with outlines. The photo is moved by a transform; the outlines are drawn anew at every zoom, so that
// their lines stay thin and sharp far below a pixel.
export function open(root, model) {
  const picture = root.querySelector('img');
  const drawing = root.querySelector('svg');
  const figure = root.closest('figure');
  const scaleText = figure.querySelector('[data-view-scale]');
  const pointers = new Map();
  const most = 60;
  let scale = 1, left = 0, top = 0;
  const width = () => Number(root.dataset.width), height = () => Number(root.dataset.height);
  const fitScale = () => Math.min(root.clientWidth / width(), root.clientHeight / height());

  function place() {
    scale = Math.min(most, Math.max(0.5 * fitScale(), scale));
    const img = root.querySelector('img');
    img.style.width = `${width()}px`;
    img.style.height = `${height()}px`;
    img.style.transform = `translate(${-left * scale}px, ${-top * scale}px) scale(${scale})`;
    img.style.imageRendering = scale > 3 ? 'pixelated' : 'auto';
    drawing.setAttribute('viewBox', `${left} ${top} ${root.clientWidth / scale} ${root.clientHeight / scale}`);
    scaleText.textContent = `${scale >= 1 ? scale.toFixed(1) : scale.toFixed(2)} screen px per photo px`;
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
  function magnify(x, y) {
    const img = root.querySelector('img');
    if (!root.dataset.tool || !img.complete || !img.naturalWidth) { glass.hidden = true; return; }
    const side = glass.width, power = Math.max(4, 2.5 * scale), pen = glass.getContext('2d');
    const px = left + x / scale, py = top + y / scale, seen = side / power, ratio = img.naturalWidth / width();
    glass.hidden = false;
    glass.classList.toggle('is-left', x > root.clientWidth - side - 40 && y < side + 40);
    pen.imageSmoothingEnabled = power < 8;
    pen.fillStyle = '#101416';
    pen.fillRect(0, 0, side, side);
    pen.drawImage(img, (px - seen / 2) * ratio, (py - seen / 2) * ratio, seen * ratio, seen * ratio, 0, 0, side, side);
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
  root.addEventListener('pointerleave', () => { glass.hidden = true; });
  root.addEventListener('keydown', key);
  figure.addEventListener('click', tool);
  watch.observe(root);
  fit();
  return { show: fit, section, close: () => { watch.disconnect(); figure.removeEventListener('click', tool); } };
}
