// Sends photos from any form marked data-upload, one after another, and lets Ctrl+Z and Ctrl+Y press the undo and redo buttons.
(() => {
  const most = 200_000_000;

  function line(status, text, isProblem) {
    const p = document.createElement('p');
    p.textContent = text;
    if (isProblem) { p.className = 'note problem'; p.setAttribute('role', 'alert'); }
    status.append(p);
    return p;
  }

  function send(form, file, token, status) {
    return new Promise(done => {
      const told = line(status, `${file.name}: sending …`, false);
      const bar = document.createElement('progress');
      bar.setAttribute('aria-label', `Sending ${file.name}`);
      told.append(' ', bar);
      const fail = text => { told.remove(); line(status, text, true); done(); };
      if (file.size > most) { fail(`${file.name}: the file is longer than 200 MB.`); return; }
      const request = new XMLHttpRequest();
      request.open('POST', form.action);
      request.setRequestHeader('X-Form-Token', token);
      request.upload.onprogress = e => { bar.max = e.total; bar.value = e.loaded; };
      request.onerror = () => fail(`${file.name}: the connection was lost. Send it again.`);
      request.onload = () => {
        if (request.status === 200) {
          let said = 'taken in.';
          try { said = JSON.parse(request.responseText).message ?? said; } catch { /* an answer without words */ }
          told.remove();
          line(status, `${file.name}: ${said}`, false);
          done();
          return;
        }
        let text = request.responseText;
        try { const problem = JSON.parse(text); text = `${problem.what} ${problem.remedy}`; } catch { text = text || 'It was refused.'; }
        fail(`${file.name}: ${text}`);
      };
      const body = new FormData();
      body.append('photo', file, file.name);
      request.send(body);
    });
  }

  async function sendAll(form, files) {
    const status = form.querySelector('[data-upload-status]');
    const token = form.querySelector('input[name="__RequestVerificationToken"]').value;
    status.replaceChildren();
    for (const file of files) { await send(form, file, token, status); }
  }

  const formOf = e => e.target instanceof Element ? e.target.closest('form[data-upload]') : null;

  document.addEventListener('change', e => {
    const form = formOf(e);
    if (form && e.target.type === 'file') { const files = [...e.target.files]; e.target.value = ''; sendAll(form, files); }
  });
  document.addEventListener('submit', e => { if (formOf(e)) { e.preventDefault(); } });
  document.addEventListener('dragover', e => { const form = formOf(e); if (form) { e.preventDefault(); form.classList.add('is-over'); } });
  document.addEventListener('dragleave', e => formOf(e)?.classList.remove('is-over'));
  document.addEventListener('drop', e => {
    const form = formOf(e);
    if (form) { e.preventDefault(); form.classList.remove('is-over'); sendAll(form, [...e.dataTransfer.files]); }
  });

  // A browser leaves what it shows by a corner where it is: who goes by keyboard sees the whole of it.
  document.addEventListener('focusin', e => { if (e.target.matches(':focus-visible')) { e.target.scrollIntoView({ block: 'nearest', inline: 'nearest' }); } });

  document.addEventListener('click', e => { if (e.target instanceof Element && e.target.closest('[data-reload]')) { location.reload(); } });

  document.addEventListener('click', e => { if (e.target instanceof Element && e.target.closest('[data-print]')) { window.print(); } });

  document.addEventListener('keydown', e => {
    const typing = e.target instanceof Element && e.target.matches('input, select, textarea');
    if (typing || !(e.ctrlKey || e.metaKey) || e.altKey) { return; }
    const key = e.key.toLowerCase();
    const wanted = key === 'z' ? (e.shiftKey ? 'redo' : 'undo') : key === 'y' ? 'redo' : null;
    const button = wanted && document.querySelector(`button[data-key="${wanted}"]`);
    if (button && !button.disabled) { e.preventDefault(); button.click(); }
  });
})();
