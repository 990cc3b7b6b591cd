// What a person without a mouse meets on a page. Loaded by KeyboardWalk.
(() => {
  const numbers = new WeakMap();
  let next = 0;
  const number = each => { if (!numbers.has(each)) { numbers.set(each, next++); } return numbers.get(each); };
  const isShown = each => each.checkVisibility({ checkVisibilityCSS: true }) && each.getClientRects().length > 0;
  const isControl = each => each.matches('a[href], button, input, select, textarea, summary, [tabindex="0"]');

  function name(each) {
    const words = each.getAttribute('aria-label') ?? (each.labels?.[0]?.innerText || each.innerText || each.title || '');
    return `${each.tagName.toLowerCase()}${each.type ? `[${each.type}]` : ''} "${words.trim().replace(/\s+/g, ' ').slice(0, 60)}"`;
  }

  // A group of radio buttons is one stop: the arrows go on within it (WAI-ARIA Authoring Practices, radio group).
  function isStop(each) {
    if (each.disabled || each.type === 'hidden' || !isShown(each)) { return false; }
    if (each.type !== 'radio') { return true; }
    const group = [...document.querySelectorAll(`input[type=radio][name="${each.name}"]`)];
    return each.checked || (!group.some(other => other.checked) && group[0] === each);
  }

  const controls = () => [...document.querySelectorAll('a, button, input, select, textarea, summary, [tabindex="0"]')].filter(each => isControl(each) && isStop(each));

  // WCAG 2.2, relative luminance and contrast ratio.
  function luminance([r, g, b]) {
    const [x, y, z] = [r, g, b].map(v => v / 255).map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
    return 0.2126 * x + 0.7152 * y + 0.0722 * z;
  }
  const contrast = (a, b) => { const [x, y] = [luminance(a), luminance(b)].sort((p, q) => q - p); return (x + 0.05) / (y + 0.05); };
  const colour = text => text.match(/[\d.]+/g).map(Number);
  function ground(each) {
    for (let at = each; at; at = at.parentElement) {
      const found = colour(getComputedStyle(at).backgroundColor);
      if (found.length < 4 || found[3] === 1) { return found.slice(0, 3); }
    }
    return [255, 255, 255];
  }

  // What wears the outline: the control itself, or the label of one that is not seen.
  function worn(each) {
    const box = each.getBoundingClientRect();
    return box.width < 2 || box.height < 2 ? [...each.labels ?? []] : [each, ...each.type === 'radio' || each.type === 'checkbox' ? each.labels ?? [] : []];
  }

  function indicator(each) {
    const said = [];
    for (const wearer of worn(each)) {
      const style = getComputedStyle(wearer);
      const width = style.outlineStyle === 'none' ? 0 : parseFloat(style.outlineWidth);
      if (width < 2) { said.push(`outline ${width} px`); continue; }
      const offset = parseFloat(style.outlineOffset);
      const around = offset < 0 ? ground(wearer) : ground(wearer.parentElement ?? wearer);
      const ratio = contrast(colour(style.outlineColor), around);
      if (ratio < 3) { said.push(`contrast ${ratio.toFixed(2)}`); continue; }
      const box = wearer.getBoundingClientRect(), reach = width + offset;
      const cut = clipped(wearer, { left: box.left - reach, top: box.top - reach, right: box.right + reach, bottom: box.bottom + reach });
      if (cut) { said.push(`cut off by ${cut}`); continue; }
      return null;
    }
    return said.join(', ') || 'nothing shows the focus';
  }

  // An outline is painted within whatever clips its element.
  function clipped(wearer, box) {
    for (let at = wearer.parentElement; at && at !== document.body; at = at.parentElement) {
      const style = getComputedStyle(at);
      if (style.overflowX === 'visible' && style.overflowY === 'visible') { continue; }
      const edge = at.getBoundingClientRect(), left = edge.left + at.clientLeft, top = edge.top + at.clientTop;
      const lost = [box.left < left - 0.5, box.top < top - 0.5, box.right > left + at.clientWidth + 0.5, box.bottom > top + at.clientHeight + 0.5];
      if (lost.some(side => side)) { return `.${at.className || at.tagName} at ${['left', 'top', 'right', 'bottom'].filter((_, i) => lost[i])} (${Math.round(box.left)} to ${Math.round(box.right)} px in ${Math.round(left)} to ${Math.round(left + at.clientWidth)} px)`; }
    }
    return null;
  }

  // A sheet that hangs above the page must not hide what has the focus (WCAG 2.2, 2.4.11).
  function isCovered(each) {
    const wearer = worn(each)[0];
    if (!wearer) { return false; }
    const box = wearer.getBoundingClientRect();
    const x = Math.min(Math.max((box.left + box.right) / 2, 1), innerWidth - 2), y = Math.min(Math.max((box.top + box.bottom) / 2, 1), innerHeight - 2);
    const top = document.elementFromPoint(x, y);
    return !(top && (wearer.contains(top) || top.contains(wearer) || [...each.labels ?? []].some(label => label.contains(top) || top.contains(label))));
  }

  // What answers to a finger: the control and its label. Links within a line of text are as high as the line (WCAG 2.2, 2.5.8, inline).
  function target(each) {
    if (each.matches('a') && getComputedStyle(each).display === 'inline' && !each.closest('nav')) { return null; }
    const boxes = [each, ...each.labels ?? []].map(part => part.getBoundingClientRect());
    const of = each.matches('input, select') && !(each.type === 'radio' || each.type === 'checkbox' || boxes[0].width < 2 || each.closest('label.cell')) ? [boxes[0]] : boxes;
    return {
      width: Math.max(...of.map(box => box.right)) - Math.min(...of.map(box => box.left)),
      height: Math.max(...of.map(box => box.bottom)) - Math.min(...of.map(box => box.top)),
    };
  }

  window.keyboardWalk = {
    focus() {
      const each = document.activeElement;
      if (!each || each === document.body) { return null; }
      const size = target(each);
      return {
        number: number(each), name: name(each), indicator: indicator(each), isCovered: isCovered(each),
        width: size?.width ?? null, height: size?.height ?? null,
        isPressed: each.matches('a, button, input, select, summary') && !each.matches('[type=radio], [type=checkbox]'),
        isClosed: each.matches('summary') && !each.parentElement.open,
      };
    },
    order: () => controls().map(each => ({ number: number(each), name: name(each) })),
  };
})();
