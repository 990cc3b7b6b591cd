// Starts the page's connection to the workbench. When it is lost, the page says so, tries again every second for as long as it takes, and keeps
// what is typed meanwhile: it is told to the workbench once that answers, even by a page loaded anew.
(() => {
  const shelf = 'sectionscan-typed';
  const notice = document.getElementById('components-reconnect-modal');
  const longAfter = 8;
  const waitMs = 15_000;

  // Fields whose text the workbench may not know: true once it was entered, not only begun.
  const typed = new Map();
  let isLost = false;

  const isField = each => each instanceof HTMLElement && each.matches('main input:not([type=file]), header input, main select, main textarea');
  const isTicked = each => each.type === 'checkbox' || each.type === 'radio';

  document.addEventListener('input', e => { if (isField(e.target)) { typed.set(e.target, false); } }, true);
  document.addEventListener('change', e => {
    if (!isField(e.target)) { return; }
    if (isLost) { typed.set(e.target, true); } else { typed.delete(e.target); }
  }, true);

  function tell(each) {
    for (const kind of ['input', 'change']) { each.dispatchEvent(new Event(kind, { bubbles: true })); }
  }

  // Answered again, and the page is the same: what is still being typed is left to who types it.
  function tellAll() {
    for (const [each, isEntered] of [...typed]) {
      if (!each.isConnected) { typed.delete(each); } else if (isEntered || each !== document.activeElement) { tell(each); }
    }
  }

  const nameOf = each => each.getAttribute('aria-label') ?? each.labels?.[0]?.textContent.trim().replace(/\s+/g, ' ') ?? each.id;
  const alike = name => [...document.querySelectorAll('input, select, textarea')].filter(each => isField(each) && nameOf(each) === name);

  function keep() {
    const entries = [...typed.keys()].filter(each => each.isConnected).map(each => ({
      name: nameOf(each), at: alike(nameOf(each)).indexOf(each), value: each.value, isTicked: each.checked,
    }));
    if (entries.length > 0) { sessionStorage.setItem(shelf, JSON.stringify({ path: location.pathname, entries })); }
  }

  async function bringBack() {
    const kept = JSON.parse(sessionStorage.getItem(shelf) ?? 'null');
    sessionStorage.removeItem(shelf);
    if (kept?.path !== location.pathname) { return; }
    const until = Date.now() + waitMs;
    let left = kept.entries;
    while (left.length > 0 && Date.now() < until) {
      await new Promise(done => setTimeout(done, 100));
      if (!document.querySelector('[data-interactive=true]')) { continue; }
      left = left.filter(entry => {
        const each = alike(entry.name)[entry.at];
        if (!each) { return true; }
        if (isTicked(each)) { if (each.checked === entry.isTicked) { return false; } each.checked = entry.isTicked; } else { each.value = entry.value; }
        tell(each);
        return false;
      });
    }
  }

  notice.addEventListener('components-reconnect-state-changed', e => {
    const { state, currentAttempt } = e.detail;
    notice.classList.toggle('is-long', state === 'retrying' && currentAttempt > longAfter);
    if (state === 'hide') {
      isLost = false;
      tellAll();
    } else {
      isLost = true;

      // The workbench was ended and started again: the page is loaded anew, from what is saved.
      if (state === 'rejected') { keep(); location.reload(); }
    }
  });

  bringBack();
  window.Blazor.start({ circuit: { reconnectionOptions: { maxRetries: Number.MAX_SAFE_INTEGER, retryIntervalMilliseconds: 1000 } } });
})();
